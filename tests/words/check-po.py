#!/usr/bin/env python3
# The translations against the sources as they are now, not against a template that may be old.
#
#   check-po.py files ROOT      every file with a marked string is listed in po/POTFILES, every file listed exists, and no
#                               marked string is broken by a macro such as G_GINT64_FORMAT, where the template would cut it,
#                               or hidden in a macro that is no keyword
#   check-po.py complete ROOT   each language named in COMPLETE has every string, none fuzzy, directives and line ends as in the English
#
# The keywords are those of po/meson.build, so that test and template cannot part.
#
# Copyright (C) 2026 The Estimend developers
# SPDX-License-Identifier: GPL-3.0-or-later
import os, pathlib, re, shutil, subprocess, sys, tempfile

# A language joins when it is complete; from then on it has to stay so.
COMPLETE = ['de', 'es', 'fr']

# What meson's preset "glib" adds to a project's own keywords (Meson reference manual, i18n module).
PRESET = ['_', 'N_', 'C_:1c,2', 'NC_:1c,2', 'g_dcgettext:2', 'g_dngettext:2,3', 'g_dpgettext2:2c,3', 'Q_:1g']
TOOLS = ['xgettext', 'msgmerge', 'msgfmt', 'msgattrib']


def run(root, *command):
    result = subprocess.run(command, cwd=root, capture_output=True, text=True, env={**os.environ, 'LC_ALL': 'C'})
    return result.returncode, result.stdout, result.stderr


def candidates(root):
    found = [p for p in (root / 'src').rglob('*') if p.suffix in ('.c', '.h')]
    found += (root / 'ui').glob('*.ui')
    found += [p for p in (root / 'data').iterdir() if p.name.endswith(('.desktop.in', '.metainfo.xml.in'))]
    return sorted(str(p.relative_to(root)) for p in found)


def own_keywords(root):
    return re.findall(r"'--keyword=([^']+)'", (root / 'po' / 'meson.build').read_text(encoding='utf-8'))


def template(root, files, out):
    own = own_keywords(root)
    keywords = [f'--keyword={word}' for word in PRESET + own]
    code, _, errors = run(root, 'xgettext', '--from-code=UTF-8', '--add-comments=Translators', *keywords, '-o', str(out), *files)
    if 'is unknown' in errors:
        print(f'skipped, the rules to read a file type are not installed: {errors.strip()}')
        sys.exit(77)
    if code != 0 or not out.exists() or not own:
        sys.exit(f'xgettext found nothing: {errors.strip()}')


def check_cuts(root):
    wrong = []
    for name in candidates(root):
        text = (root / name).read_text(encoding='utf-8') if name.endswith(('.c', '.h')) else ''
        for match in re.finditer(r'\b(?:_|N_|EM_N|ngettext)\s*\(\s*((?:"(?:[^"\\]|\\.)*"\s*)+)([A-Za-z_]\w*)', text):
            wrong.append(f'{name}:{text.count(chr(10), 0, match.start()) + 1}: {match[2]} cuts a marked string, write the number apart and insert it with %s')
    return wrong


# A macro that marks one of its parameters hides the string from xgettext, unless it is a keyword itself with that parameter's place.
def check_macros(root):
    own, wrong = own_keywords(root), []
    for name in candidates(root):
        text = (root / name).read_text(encoding='utf-8').replace('\\\n', ' ') if name.endswith(('.c', '.h')) else ''
        for macro, parameters, body in re.findall(r'^#define (\w+)\(([^)]*)\)(.*)$', text, re.M):
            places = {word.strip(): i + 1 for i, word in enumerate(parameters.split(','))}
            wrong += [f'{name}: {macro} marks {word}, add --keyword={macro}:{places[word]} to po/meson.build'
                      for word in re.findall(r'\b(?:_|N_|EM_N) ?\((\w+)\)', body) if word in places and f'{macro}:{places[word]}' not in own]
    return wrong


def check_files(root, pot):
    template(root, candidates(root), pot)
    marked = {re.sub(r':\d+$', '', place) for line in re.findall(r'^#: (.*)$', pot.read_text(encoding='utf-8'), re.M) for place in line.split()}
    lines = (root / 'po' / 'POTFILES').read_text(encoding='utf-8').splitlines()
    listed = {line for line in lines if line and not line.startswith('#')}
    wrong = [f'{name}: has marked strings, add it to po/POTFILES' for name in sorted(marked - listed)]
    wrong += [f'{name}: listed in po/POTFILES, but there is no such file' for name in sorted(listed) if not (root / name).is_file()]
    return wrong + check_cuts(root) + check_macros(root)


def check_language(root, language, pot):
    source, merged = root / 'po' / f'{language}.po', pot.with_name(f'{language}.po')
    code, _, errors = run(root, 'msgmerge', '--quiet', '--no-fuzzy-matching', '-o', str(merged), str(source), str(pot))
    if code != 0:
        return [f'{language}: {errors.strip()}']
    code, _, errors = run(root, 'msgfmt', '--check', '--statistics', '-o', os.devnull, str(merged))
    if code == 0 and 'fuzzy' not in errors and 'untranslated' not in errors:
        return []
    wrong = [f'{language}: {errors.strip()}']
    for state in ('--untranslated', '--only-fuzzy'):
        entries = run(root, 'msgattrib', state, '--no-obsolete', '--no-wrap', '--no-location', str(merged))[1]
        wrong += [f'  {entry}' for entry in re.findall(r'^msgid (".+")$', entries, re.M) if entry != '""']
    return wrong


def check_complete(root, pot):
    template(root, candidates(root), pot)
    named = (root / 'po' / 'LINGUAS').read_text(encoding='utf-8').split()
    wrong = [f'{language}: not in po/LINGUAS' for language in COMPLETE if language not in named]
    return wrong + [line for language in COMPLETE for line in check_language(root, language, pot)]


def main():
    check = {'files': check_files, 'complete': check_complete}[sys.argv[1]]
    missing = [tool for tool in TOOLS if shutil.which(tool) is None]

    if missing:
        print(f'skipped, not installed: {", ".join(missing)}')
        sys.exit(77)
    with tempfile.TemporaryDirectory() as folder:
        wrong = check(pathlib.Path(sys.argv[2]).resolve(), pathlib.Path(folder) / 'fresh.pot')
    print('\n'.join(wrong))
    sys.exit(1 if wrong else 0)


if __name__ == '__main__':
    main()
