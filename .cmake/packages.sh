# Sourced by app/run and tests/run: installs the Debian packages that are missing, and says which.
# install_packages PACKAGE...
install_packages() {
    local missing=() package
    for package in "$@"; do
        [ "$(dpkg-query -W -f='${db:Status-Abbrev}' "$package" 2>/dev/null)" = "ii " ] || missing+=("$package")
    done
    [ ${#missing[@]} -eq 0 ] && return 0
    echo "Installing: ${missing[*]}" >&2
    local as_root=()
    if [ "$(id -u)" -ne 0 ]; then
        if ! command -v sudo >/dev/null; then
            echo "These packages are needed, and installing them needs root or sudo: ${missing[*]}" >&2
            return 1
        fi
        as_root=(sudo)
    fi
    "${as_root[@]}" apt-get update -qq >&2
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends \
        -o DPkg::Lock::Timeout=300 "${missing[@]}" >&2
}

# What building the program needs.
build_packages=(g++ cmake ninja-build ccache pkg-config
    qt6-base-dev qt6-svg-dev libgl-dev libvulkan-dev
    libboost1.81-dev nlohmann-json3-dev libexpected-dev libcli11-dev libqpdf-dev
    fonts-inter fontconfig)

# What the tests need besides.
test_packages=(libgtest-dev libgmock-dev libbenchmark-dev librapidcheck-dev
    libocct-foundation-dev libocct-modeling-data-dev libocct-modeling-algorithms-dev libocct-visualization-dev
    cups-daemon cups-client cups-filters poppler-utils librsvg2-bin libxml2-utils qpdf python3 python3-jsonschema
    xvfb openbox xdotool x11-utils xclip imagemagick
    at-spi2-core gir1.2-atspi-2.0 python3-gi dbus-daemon fonts-dejavu-core fonts-routed-gothic)
