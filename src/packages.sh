# packages.sh: shared by src/start, tests/run and .ci/run: what Debian has to have, and the build.
# Quiet when there is nothing to do.

run_packages="gcc meson ninja-build pkg-config gettext libgtk-4-dev libadwaita-1-dev libjson-glib-dev
  libgsl-dev libglpk-dev libwebp-dev itstool yelp-tools fonts-dejavu-core fonts-cantarell adwaita-icon-theme
  librsvg2-common gsettings-desktop-schemas libgtk-4-bin desktop-file-utils shared-mime-info"

as_root() {
  if [ "$(id -u)" -eq 0 ]; then
    "$@"
  elif command -v sudo >/dev/null 2>&1; then
    sudo "$@"
  else
    echo "Root rights are needed to run: $*" >&2
    echo "Run it as root, then start again." >&2
    exit 1
  fi
}

missing_packages() {
  for name in $1; do
    dpkg-query -W -f='${Status}\n' "$name" 2>/dev/null | grep -q '^install ok installed$' || echo "$name"
  done
}

install_packages() {
  if ! command -v apt-get >/dev/null 2>&1; then
    echo "This system has no apt-get, so packages can't be installed here. Spirewright is made on Debian 12;" >&2
    echo "on another system install the same libraries (src/packages.sh lists them), then run:" >&2
    echo "  meson setup build && ninja -C build && build/src/spirewright" >&2
    exit 1
  fi
  missing=$(missing_packages "$1")
  [ -z "$missing" ] && return 0
  echo "Installing with apt-get:" $missing
  log=$(mktemp)
  # The lists may be old or absent: try with them, and fetch them once if that fails.
  if ! install_now "$log" $missing; then
    as_root apt-get -o DPkg::Lock::Timeout=500 update >"$log" 2>&1 || { cat "$log" >&2; exit 1; }
    install_now "$log" $missing || { cat "$log" >&2; rm -f "$log"; exit 1; }
  fi
  rm -f "$log"
}

install_now() {
  into=$1
  shift
  as_root env DEBIAN_FRONTEND=noninteractive apt-get -o DPkg::Lock::Timeout=500 install -y \
    --no-install-recommends "$@" >"$into" 2>&1
}

# build_program FOLDER BUILDTYPE [meson option …]; $targets narrows what is built
build_program() {
  folder=$1 kind=$2
  shift 2
  log=$(mktemp)
  if [ ! -f "$folder/build.ninja" ]; then
    echo "Building into $folder …"
    meson setup "$folder" "$top" --buildtype="$kind" "$@" >"$log" 2>&1 || { cat "$log" >&2; exit 1; }
  fi
  ninja -C "$folder" ${targets:-all} >"$log" 2>&1 || { cat "$log" >&2; exit 1; }
  rm -f "$log"
}
