#!/usr/bin/env python3
# The engine includes its own headers and a short list of C11's, so that no I/O library, locale or GLib slips in.
#
# Copyright (C) 2026 The Estimend developers
# SPDX-License-Identifier: GPL-3.0-or-later
import pathlib, re, sys

allowed = {'assert.h', 'errno.h', 'float.h', 'inttypes.h', 'limits.h', 'math.h', 'stdbool.h', 'stddef.h', 'stdint.h', 'stdio.h', 'stdlib.h', 'string.h'}
files = [p for p in pathlib.Path(sys.argv[1]).rglob('*') if p.suffix in ('.c', '.h')]
wrong = [f'{p}: {name}' for p in files for name in re.findall(r'#\s*include\s*<([^>]+)>', p.read_text(encoding='utf-8')) if name not in allowed]
print('\n'.join(wrong))
sys.exit(1 if wrong or not files else 0)
