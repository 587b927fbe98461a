#!/bin/sh
# Makes verdicts.txt anew: one line a variant, "variant verdict states transitions". Needs spin and gcc.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
one() {
    name=$1; shift
    spin "$@" -a "$here/three-rooms.pml" > spin.log
    gcc -O2 -DSAFETY -DBFS -w -o pan pan.c
    ./pan > pan.log || true
    verdict=proven
    grep -q 'errors: 0' pan.log || verdict=broken
    states=$(sed -n 's/^ *\([0-9]*\) states, stored.*/\1/p' pan.log)
    moves=$(sed -n 's/^ *\([0-9]*\) transitions.*/\1/p' pan.log)
    echo "$name $verdict $states $moves"
}
{
    one whole
    one without-proof -DNOPROOF
    one without-delay -DNODELAY
    one without-proof-and-delay -DNOPROOF -DNODELAY
} > "$here/verdicts.txt"
# Speed: depth first on the same model with long times.
spin -DOPENING=24 -DDELAY=24 -DOVERRUN=30 -DRUNDOWN=6 -DREST=30 -DLEAD=4 -a "$here/three-rooms.pml" > spin.log
gcc -O2 -DSAFETY -DCOLLAPSE -w -o pan pan.c
./pan -m1000000 > pan.log
sed -n 's/^ *\([0-9]*\) transitions.*/# long times: \1 transitions/p; s/^pan: elapsed time \(.*\)/# in \1/p' pan.log >> "$here/verdicts.txt"
