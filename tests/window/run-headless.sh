#!/bin/sh
# Copyright (C) 2026 The Estimend developers
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Runs a program under a virtual display of its own, with nothing of the desktop's.
# Exit 77 (skipped) where there is no virtual display to be had.
command -v xvfb-run >/dev/null 2>&1 || exit 77
config=$(mktemp -d) || exit 77
trap 'rm -rf "$config"' EXIT
GSK_RENDERER=cairo GDK_BACKEND=x11 GDK_DEBUG=gl-disable GTK_A11Y=${GTK_A11Y:-none}
DBUS_SESSION_BUS_ADDRESS=disabled: GSETTINGS_BACKEND=memory G_DEBUG=${G_DEBUG:-fatal-criticals}
ESTIMEND_CONFIG_DIR=$config ESTIMEND_STATE_DIR=$config XDG_CONFIG_HOME=$config XDG_CACHE_HOME=$config XDG_DATA_HOME=$config NO_AT_BRIDGE=1
export GSK_RENDERER GDK_BACKEND GDK_DEBUG GTK_A11Y DBUS_SESSION_BUS_ADDRESS GSETTINGS_BACKEND G_DEBUG
export ESTIMEND_CONFIG_DIR ESTIMEND_STATE_DIR XDG_CONFIG_HOME XDG_CACHE_HOME XDG_DATA_HOME NO_AT_BRIDGE
# ESTIMEND_TEST_SLOW, how many times as long tests wait, for valgrind: nearly all of its time would go into Cairo's shades, shadows and transitions, so that a window takes minutes
# to appear; they are left out. The pointer begins amid a screen so large that no window is under it: GTK 4.8 asks where it is for a tip,
# half a second later, of a window that a test may have destroyed by then.
screen=1920x1080
if [ -n "${ESTIMEND_TEST_SLOW:-}" ]; then
  screen=4000x3000
  export GTK_THEME=Empty
  mkdir -p "$config/gtk-4.0"
  printf '[Settings]\ngtk-enable-animations=0\ngtk-cursor-blink=0\n' >"$config/gtk-4.0/settings.ini"
fi
xvfb-run -a -s "-screen 0 ${screen}x24 -noreset" "$@"
