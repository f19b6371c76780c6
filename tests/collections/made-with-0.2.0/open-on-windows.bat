@echo off
chcp 65001 >nul
cd /d "%~dp0"
where storymaths >nul 2>nul
if not errorlevel 1 (
  storymaths serve --open
) else (
  py -m storymaths serve --open
)
if errorlevel 1 (
  echo.
  echo If storymaths was not found, install it first:  py -m pip install storymaths
  pause
)
