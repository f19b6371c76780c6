#!/bin/sh
cd "$$(dirname "$$0")" || exit 1
PATH="$$HOME/.local/bin:/opt/homebrew/bin:/usr/local/bin:$$PATH"
if command -v storymaths >/dev/null 2>&1; then
  storymaths serve --open
elif python3 -c "import storymaths" >/dev/null 2>&1; then
  python3 -m storymaths serve --open
else
  echo "storymaths is not installed on this computer. Install it first:  python3 -m pip install storymaths"
fi
printf "Press Enter to close. "
read -r _
