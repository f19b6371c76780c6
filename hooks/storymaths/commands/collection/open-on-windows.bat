@echo off
chcp 65001 >nul
cd /d "%~dp0"
where storymaths >nul 2>nul
if not errorlevel 1 (
  storymaths serve --open
  goto end
)
py -c "import storymaths" >nul 2>nul
if not errorlevel 1 (
  py -m storymaths serve --open
  goto end
)
echo storymaths is not installed on this computer. Install it first:  py -m pip install storymaths
:end
pause
