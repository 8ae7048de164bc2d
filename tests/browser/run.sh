#!/bin/sh
# run.sh page|browser ROOT PROGRAM: ends with 77 (skipped) where node, the page's packages or chromium are missing.
kind=$1 root=$2 program=$3
command -v node >/dev/null || { echo "skipped: there is no node"; exit 77; }
[ -d "$root/web/node_modules" ] || { echo "skipped: web/node_modules is missing; ./dev test makes it"; exit 77; }
if [ "$kind" = page ]; then
  cd "$root/web" && exec npx vitest run
fi
[ -f "$root/web/dist/index.html" ] || { echo "skipped: the page was not built"; exit 77; }
chromium=$(command -v chromium) || { echo "skipped: there is no chromium"; exit 77; }
QUELL_ROOT=$root QUELL_PROGRAM=$program QUELL_CHROMIUM=$chromium exec node --test --test-concurrency=1 "$root"/tests/browser/*.test.mjs
