#!/bin/sh
cd "$(dirname "$0")" || exit 1
PATH="$HOME/.local/bin:/opt/homebrew/bin:/usr/local/bin:$PATH"
if command -v storymaths >/dev/null 2>&1; then
  storymaths serve --open
else
  python3 -m storymaths serve --open
fi
if [ $? -ne 0 ]; then
  echo
  echo "If storymaths was not found, install it first:  python3 -m pip install storymaths"
  printf "Press Enter to close. "
  read -r _
fi
