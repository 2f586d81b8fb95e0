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
xvfb-run -a -s "-screen 0 1920x1080x24 -noreset" "$@"
