#!/usr/bin/env bash
# ./dev prove-fresh: the README's two commands from a clean clone, in a Debian 12 system made a moment ago that holds git and nothing
# else of ours. Runs as root. Argument: the project's folder.
set -euo pipefail
project=$1

if [[ ${2:-} != inside ]]; then
  # Own mount namespace: what is mounted below is gone when this ends, however it ends.
  exec unshare --mount --propagation private "$0" "$project" inside
fi

work=$(mktemp -d --tmpdir=/var/tmp)
root=$work/root
clean_up() {
  umount --recursive "$root/dev" 2>/dev/null || true
  umount "$root/proc" 2>/dev/null || true
  if [[ -n ${QUELL_KEEP_ROOT:-} ]]; then
    echo "Kept: $root"
  elif mountpoint -q "$root/dev" || mountpoint -q "$root/proc"; then
    echo "Something is still mounted in $root; it is left there." >&2
  else
    rm -rf --one-file-system "$work"
  fi
}
trap clean_up EXIT

# The machine's own mirror: first Debian address in apt's sources, old one-line or new form.
mirror=$({ cat /etc/apt/sources.list /etc/apt/sources.list.d/debian.sources /etc/apt/sources.list.d/*.list 2>/dev/null || true; } |
  sed -nE 's/^URIs:[[:space:]]*([^[:space:]]+).*/\1/p; s/^deb[[:space:]]+(\[[^]]*\][[:space:]]*)?([^[:space:]]+).*/\2/p' | sed -n 1p)
[[ -n $mirror ]] || { echo "apt's sources name no mirror." >&2; exit 1; }

echo "Making a minimal Debian 12 in $root"
mmdebstrap --quiet --variant=apt --include=ca-certificates,git bookworm "$root" "$mirror"

# What this machine needs to reach its mirror, the new system needs too: name servers, proxy settings, certificates.
cp /etc/resolv.conf "$root/etc/resolv.conf"
printf '127.0.0.1 localhost\n::1 localhost\n' >"$root/etc/hosts"
apt-config dump | grep -iE '^Acquire::(http|https)::(Proxy|CaInfo|[^ ]*::Proxy)' >"$root/etc/apt/apt.conf.d/90machine" || true
if compgen -G '/usr/local/share/ca-certificates/*.crt' >/dev/null; then
  cp /usr/local/share/ca-certificates/*.crt "$root/usr/local/share/ca-certificates/"
  chroot "$root" update-ca-certificates >/dev/null
fi
mount -t proc proc "$root/proc"
mount --rbind /dev "$root/dev"

echo "Cloning HEAD of $project"
git -c safe.directory='*' clone --quiet --no-hardlinks "$project" "$root/src/quell"
git -c safe.directory='*' -C "$root/src/quell" log -1 --format='The proof is of commit %h, %s'

run_inside() {
  echo
  echo "Inside the new system: ./dev $1"
  local started=$SECONDS
  env -i PATH=/usr/local/sbin:/usr/local/bin:/usr/sbin:/usr/bin:/sbin:/bin HOME=/root LC_ALL=C \
    ${http_proxy:+http_proxy="$http_proxy"} ${https_proxy:+https_proxy="$https_proxy"} ${no_proxy:+no_proxy="$no_proxy"} \
    chroot "$root" bash -c "cd /src/quell && ./dev $1"
  echo "./dev $1 passed in $((SECONDS - started)) s."
}
run_inside demo
run_inside test
echo
echo "Proven: demo and test work from a clean clone on a fresh Debian 12."
