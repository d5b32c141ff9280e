#!/bin/sh
# Gives the calendar files to readers that people use and compares what they list with the plan.
# Run from anywhere; where apt-get works and may install, missing readers are installed (Debian package names).
# A reader that cannot be had counts as neither passed nor failed. Last line: "N passed, N failed".
set -u
cd "$(dirname "$0")/../../.." || exit 1
work=$(mktemp -d)
passed=0
failed=0
server=
trap '[ -n "$server" ] && kill "$server" 2>/dev/null; rm -rf "$work"' EXIT
export LC_ALL=C.UTF-8
zones="UTC America/New_York America/St_Johns Europe/Helsinki Asia/Tokyo Asia/Kathmandu Australia/Hobart Pacific/Auckland"

node="node_modules/.bin/node"
[ -x "$node" ] || node=node
"$node" tests/calendar/readers/write-files.ts "$work" || { echo "0 passed, 1 failed"; exit 1; }

# same NAME EXPECTED FOUND: compares two listings, the second in any order.
same() {
  LC_ALL=C sort "$3" >"$3.sorted"
  if diff "$2" "$3.sorted" >"$work/diff"; then
    passed=$((passed + 1))
    echo "passed: $1 ($(wc -l <"$2") events)"
  else
    failed=$((failed + 1))
    echo "FAILED: $1"
    head -n 6 "$work/diff"
  fi
}

# have NAME PACKAGE TEST...: true when the test runs, after an attempt to install the package.
updated=
have() {
  name=$1 package=$2
  shift 2
  "$@" >/dev/null 2>&1 && return 0
  if command -v apt-get >/dev/null && [ "$(id -u)" = 0 ]; then
    [ -n "$updated" ] || timeout 180 apt-get -q -o DPkg::Lock::Timeout=120 update >"$work/apt" 2>&1
    updated=yes
    DEBIAN_FRONTEND=noninteractive timeout 300 apt-get -q -y --no-install-recommends \
      -o DPkg::Lock::Timeout=120 install "$package" >>"$work/apt" 2>&1
  fi
  "$@" >/dev/null 2>&1 && return 0
  echo "reader not available here: $name"
  return 1
}

if have icalendar python3-icalendar /usr/bin/python3 -c 'import icalendar'; then
  for file in north-before north-after south-before south-after; do
    /usr/bin/python3 tests/calendar/readers/read-icalendar.py "$work/$file.ics" >"$work/found" 2>&1
    same "icalendar reads $file" "$work/$file.uids.tsv" "$work/found"
  done
fi

if have khal khal khal --version; then
  list() {
    khal -c "$work/khal.conf" list --day-format '' --format '{start-date}	{title}' 2026-01-01 2028-12-31 >"$1" 2>&1
  }
  half=south
  for zone in $zones; do
    # It is slow: the hemispheres take turns.
    [ $half = north ] && half=south || half=north
    rm -rf "$work/vdir" "$work/khal.db"
    mkdir "$work/vdir"
    cat >"$work/khal.conf" <<CONF
[calendars]
[[season]]
path = $work/vdir
[locale]
timeformat = %H:%M
dateformat = %Y-%m-%d
longdateformat = %Y-%m-%d
datetimeformat = %Y-%m-%d %H:%M
longdatetimeformat = %Y-%m-%d %H:%M
local_timezone = $zone
default_timezone = $zone
[sqlite]
path = $work/khal.db
CONF
    khal -c "$work/khal.conf" import --batch "$work/$half-before.ics" >"$work/log" 2>&1
    list "$work/found"
    same "khal in $zone imports $half" "$work/$half-before.tsv" "$work/found"
    khal -c "$work/khal.conf" import --batch "$work/$half-after.ics" >"$work/log" 2>&1
    list "$work/found"
    same "khal in $zone imports the changed $half over it" "$work/$half-both.tsv" "$work/found"
  done
fi

if have calcurse calcurse calcurse --version; then
  for zone in $zones; do
    for file in north-before north-after south-before south-after; do
      # It adds and never replaces: each import goes into a calendar of its own.
      rm -rf "$work/calcurse"
      mkdir "$work/calcurse"
      TZ=$zone calcurse -D "$work/calcurse" -C "$work/calcurse" -q -i "$work/$file.ics" >"$work/log" 2>&1
      # "12/05/2026 [1] >note title": whole days only; an appointment would have another form and not match.
      sed -E 's#^([0-9]{2})/([0-9]{2})/([0-9]{4}) \[1\]( >[0-9a-f]+)? (.*)$#\3-\1-\2\t\5#' "$work/calcurse/apts" >"$work/found"
      same "calcurse in $zone imports $file" "$work/$file.tsv" "$work/found"
    done
  done
fi

if have radicale radicale radicale --version; then
  port=$("$node" -e 'const s = require("node:net").createServer().listen(0, "127.0.0.1", () => { console.log(s.address().port); s.close(); })')
  cat >"$work/radicale.conf" <<CONF
[server]
hosts = 127.0.0.1:$port
[auth]
type = none
[storage]
filesystem_folder = $work/collections
[web]
type = none
CONF
  radicale --config "$work/radicale.conf" >"$work/radicale.log" 2>&1 &
  server=$!
  tries=0
  until "$node" -e "fetch('http://127.0.0.1:$port/').then(() => process.exit(0), () => process.exit(1))"; do
    tries=$((tries + 1))
    [ "$tries" -lt 30 ] || break
    sleep 0.5
  done
  for half in north south; do
    for state in before after; do
      "$node" tests/calendar/readers/radicale.ts "http://127.0.0.1:$port/shed/$half/" "$work/$half-$state.ics" >"$work/found" 2>&1
      same "radicale takes $half-$state with PUT and gives it back" "$work/$half-$state.uids.tsv" "$work/found"
    done
  done
fi

echo "$passed passed, $failed failed"
[ "$failed" = 0 ]
