#!/usr/bin/env python3
# check-solids: every kind's net volume against a solid modeller's.
#
# usage: check-solids.py PROBE COUNT [SEED]
#
# Each kind is built in OpenCASCADE, through gmsh, from what the kind means: sound metal as it was and as it is, cut from each
# other; planes, cylinders, cones, spheres and tori by primitives, corners by the modeller's own fillet too. No formula of the
# program appears here. OpenCASCADE integrates the bounding faces; where every face is a plane or an exact curved surface the
# volumes agree to 1e-6 of themselves. Two are not so:
# - The half ellipsoid is a sphere stretched, which the modeller keeps as a rational spline: its volume is taken over one eighth of
#   the whole ellipsoid, cut before stretching, where the modeller's fixed rule is as exact.
# - A fillet round an axis ends in curves that the modeller fits to its own tolerance, 1e-4: those volumes agree to 5e-4 only. The
#   same corners are therefore also drawn between their tangent points and turned, which makes true tori and agrees to 1e-6.
#
# Copyright (C) 2026 The Estimend developers
# SPDX-License-Identifier: GPL-3.0-or-later
import math
import os
import random
import shlex
import subprocess
import sys

try:
    import gmsh
except ImportError:
    print('gmsh for Python is not installed: no solids to check against')
    sys.exit(77)

# What the probe runs under, such as valgrind with its options.
WRAPPER = shlex.split(os.environ.get('ESTIMEND_TEST_WRAPPER', ''))
TOLERANCE = 1e-6
FILLETED = {'outer filleted': 5e-4, 'bore filleted': 5e-4}   # forms of a corner with a tolerance of their own
NO_LENGTHS = ('form', 'side', 'ends', 'corners', 'wraps', 'angle', 'arc', 'draft', 'area')
occ = gmsh.model.occ
rng = random.Random()


# ---- random sizes ----

def size(low=0.05, high=30.0):
    """A length, as likely to lie in one octave as in another."""
    return math.exp(rng.uniform(math.log(low), math.log(high)))


def share(low=0.05, high=0.95):
    return rng.uniform(low, high)


def angle(low, high):
    return rng.uniform(low, high)


# ---- the modeller ----

def box(x0, y0, z0, x1, y1, z1):
    return (3, occ.addBox(x0, y0, z0, x1 - x0, y1 - y0, z1 - z0))


def cylinder(radius, z0, z1, turn=2 * math.pi):
    return (3, occ.addCylinder(0, 0, z0, 0, 0, z1 - z0, radius, -1, turn))


def cone(r0, z0, r1, z1, turn=2 * math.pi):
    """A frustum on the z axis; equal radii are a cylinder."""
    if r0 == r1:
        return cylinder(r0, z0, z1, turn)
    return (3, occ.addCone(0, 0, z0, 0, 0, z1 - z0, r0, r1, -1, turn))


def face(segments):
    """The plane face within a closed run of ('line' | centre, end) segments, each beginning where the one before ends."""
    ends = [occ.addPoint(*end) for _, end in segments]
    curves = []
    for i, (how, _) in enumerate(segments):
        start, end = ends[i - 1], ends[i]
        curves.append(occ.addLine(start, end) if how == 'line' else occ.addCircleArc(start, occ.addPoint(*how), end))
    return (2, occ.addPlaneSurface([occ.addCurveLoop(curves)]))


def polygon(points):
    return face([('line', point) for point in points])


def prism(base, dx, dy, dz):
    return next(part for part in occ.extrude([base], dx, dy, dz) if part[0] == 3)


def half_space(point, normal, reach):
    """All within reach of point on the side the normal points to, as a box turned to it."""
    nx, ny, nz = (n / math.hypot(*normal) for n in normal)
    part = box(-reach, -reach, 0, reach, reach, reach)
    if math.hypot(nx, ny) > 0:
        occ.rotate([part], 0, 0, 0, -ny, nx, 0, math.acos(nz))
    elif nz < 0:
        occ.rotate([part], 0, 0, 0, 1, 0, 0, math.pi)
    occ.translate([part], *point)
    return part


def only(parts):
    (part,) = parts
    return part


def cut(part, *tools):
    return only(occ.cut([part], list(tools))[0])


def common(part, *tools):
    for tool in tools:
        part = only(occ.intersect([part], [tool])[0])
    return part


def edges_where(part, test):
    """Curves of part that pass test(tag, x0, y0, z0, x1, y1, z1), the numbers their bounding box."""
    occ.synchronize()
    faces = gmsh.model.getBoundary([part], oriented=False)
    curves = {tag for _, tag in gmsh.model.getBoundary(faces, combined=False, oriented=False)}
    return sorted(tag for tag in curves if test(tag, *occ.getBoundingBox(1, tag)))


def fillet(part, curves, radius):
    return only(occ.fillet([part[1]], curves, [radius]))


def volume(*parts):
    return sum(occ.getMass(*part) for part in parts)


# ---- the kinds: each draws one shape of a variant and returns its fields and what measures it ----

def edge_nick(ends):
    """A block's edge with the corner beyond a plane gone; tapered: beyond two planes that meet in the middle."""
    l, a, b = size(), size(), size()

    def solid(k):
        x, y, z = l * k / 2, a * k, b * k
        reach = 4 * (x + y + z)
        if ends == 'square':
            block = box(-x, -1.5 * y, -1.5 * z, x, 0, 0)
            return volume(common(block, half_space((0, -y, 0), (0, z, y), reach)))
        halves = [common(box(min(0, side * 1.5 * x), -1.5 * y, -1.5 * z, max(0, side * 1.5 * x), 0, 0),
                         half_space((side * x, 0, 0), (-side / x, 1 / y, 1 / z), reach)) for side in (-1, 1)]
        return volume(*halves)
    return dict(length=l, leg_a=a, leg_b=b, ends=('square', 'tapered').index(ends)), solid


def worn_corner(form):
    """A sharp wedge less the same wedge filleted by the modeller: straight, or turned round an axis as the square end of a shaft or
    of a bore. Or the missing corner drawn between its tangent points and turned, at any angle."""
    r, theta = size(0.05, 5), 90.0 if form in FILLETED or rng.random() < 0.2 else angle(20, 160)
    to = 0.0 if rng.random() < 0.5 else r * share(0.05, 0.8)
    turned = math.radians(theta)
    leg = 1.2 * r / math.tan(turned / 2)
    fields = dict(radius=r, radius_to=to, angle=theta)
    if form == 'straight':
        fields['length'] = size()
    else:
        fields['side'] = 0 if form.startswith('outer') else 1
        fields['diameter'] = 2 * (leg * math.sin(turned) * 1.1 + size())
        if rng.random() < 0.5:
            fields['length'] = math.pi * fields['diameter'] * share()
    inward = 1 if form.startswith('bore') else -1

    def tip(k):
        return 0.0 if form == 'straight' else fields['diameter'] / 2 * k

    def along(k, which, distance):
        """The point so far from the tip on the upright face (0) or the other (1)."""
        return (tip(k) + which * inward * distance * k * math.sin(turned), 0, -distance * k * (math.cos(turned) if which else 1))

    def turn():
        return fields['length'] / (fields['diameter'] / 2) if 'length' in fields else 2 * math.pi

    def sweep(k, base):
        if form == 'straight':
            return prism(base, 0, fields['length'] * k, 0)
        return next(part for part in occ.revolve([base], 0, 0, 0, 0, 0, 1, turn()) if part[0] == 3)

    def missing(k, radius):
        """Between the sharp corner and one of that radius."""
        if radius == 0.0:
            return 0.0
        tangent = radius / math.tan(turned / 2)
        if form in ('outer', 'bore'):
            centre = (tip(k) + inward * radius * k, 0, -tangent * k)
            base = face([('line', (tip(k), 0, 0)), ('line', along(k, 0, tangent)), (centre, along(k, 1, tangent))])
            return volume(sweep(k, base))
        near = 1e-4 * tangent * k

        def is_edge(tag, x0, y0, z0, x1, y1, z1):
            """In the plane of the tip; straight and at it, or a circle as far out as it."""
            if max(abs(z0), abs(z1)) > near:
                return False
            if form == 'straight':
                return max(abs(x0), abs(x1)) < near
            return gmsh.model.getType(1, tag) == 'Circle' and abs(occ.getMass(1, tag) - turn() * tip(k)) < near
        sharp = sweep(k, polygon([(tip(k), 0, 0), along(k, 0, leg), along(k, 1, leg)]))
        sharp_volume = volume(sharp)
        return sharp_volume - volume(fillet(sharp, edges_where(sharp, is_edge), radius * k))

    return fields, lambda k: missing(k, r) - missing(k, to)


def sidewall():
    """A wall standing on a floor, before and after it is made thicker."""
    l, h, t = size(), size(), size(0.05, 5)

    def solid(k):
        wall = box(0, -t * k, 0, l * k, t * k, h * k)
        return volume(cut(wall, box(0, -t * k, 0, l * k, 0, h * k)))
    return dict(length=l, height=h, thickness=t), solid


def face_build_up(form):
    """A block before and after; the stated area is that of a floor of two overlapping rectangles."""
    t = size(0.05, 5)
    if form == 'rectangle':
        l, w = size(), size()
        return dict(form=0, length=l, width=w, thickness=t), lambda k: volume(
            cut(box(0, 0, -t * k, l * k, w * k, t * k), box(0, 0, -t * k, l * k, w * k, 0)))
    if form == 'disc':
        d = size()
        return dict(form=1, diameter=d, thickness=t), lambda k: volume(
            cut(cylinder(d / 2 * k, -t * k, t * k), cylinder(d / 2 * k, -t * k, 0)))
    x, y, p, q = size(1), size(1), share(), share()
    area = x * y - (1 - p) * x * (1 - q) * y

    def solid(k):
        floor = polygon([(0, 0, 0), (x * k, 0, 0), (x * k, q * y * k, 0), (p * x * k, q * y * k, 0), (p * x * k, y * k, 0), (0, y * k, 0)])
        return volume(prism(floor, 0, 0, t * k))
    return dict(form=2, area=area, thickness=t), solid


def rib(corners, wraps):
    """The coated rib, its crest's outer edges filleted where rounded, less the rib; a wrapped end is half round."""
    l, b, t = size(), size(), size(0.05, 5)
    h = 0.0 if corners == 'crest' else size()
    fields = dict(length=l, thickness=b, coat=t, depth=h, corners=int(corners == 'rounded'), wraps=wraps)

    def floor(k, half, z):
        """From x = 0 to l, round beyond as often as wrapped."""
        x, y, z = l * k, half * k, z * k
        right = [((x, 0, z), (x + y, 0, z)), ((x, 0, z), (x, y, z))] if wraps > 0 else [('line', (x, y, z))]
        left = [((0, 0, z), (-y, 0, z)), ((0, 0, z), (0, -y, z))] if wraps > 1 else [('line', (0, -y, z))]
        return face([('line', (x, -y, z)), *right, ('line', (0, y, z)), *left])

    def solid(k):
        if h == 0.0:
            return volume(cut(box(0, -b / 2 * k, -k, l * k, b / 2 * k, t * k), box(0, -b / 2 * k, -k, l * k, b / 2 * k, 0)))
        coated = prism(floor(k, b / 2 + t, -h), 0, 0, (h + t) * k)
        if corners == 'rounded':
            near = 1e-5 * min(b, t, l) * k

            def is_rim(tag, x0, y0, z0, x1, y1, z1):
                """On the crest, but not across a flat end."""
                return z0 > t * k - near and x1 - x0 > near
            coated = fillet(coated, edges_where(coated, is_rim), t * k)
        return volume(cut(coated, prism(floor(k, b / 2, -h), 0, 0, h * k)))
    return fields, solid


def bore(how):
    """A sleeve: the worn cylinder, or a part of its turn, less the finished one."""
    df, l = size(0.2), size()
    dw = df * (1 + share())
    fields = dict(diameter=df, length=l)
    fields.update(dict(worn=dw) if how == 'worn' else dict(build=(dw - df) / 2))
    turn = 2 * math.pi
    if rng.random() < 0.5:
        fields['arc'] = angle(5, 355)
        turn = math.radians(fields['arc'])
    return fields, lambda k: volume(cut(cylinder(dw / 2 * k, 0, l * k, turn), cylinder(df / 2 * k, 0, l * k)))


def pin(how):
    df, l = size(0.2), size()
    dw = df * share()
    fields = dict(diameter=df, length=l)
    fields.update(dict(worn=dw) if how == 'worn' else dict(build=(df - dw) / 2))
    return fields, lambda k: volume(cut(cylinder(df / 2 * k, 0, l * k), cylinder(dw / 2 * k, 0, l * k)))


def seat(form):
    """Cone: the worn seat less the same cone raised along its axis until it is the thickness away. Sphere: two spheres about one
    centre, within the cone of rays to the mouth."""
    if form == 'cone':
        small = size()
        mouth, h = small * (1.1 + share()), size()
        alpha = math.atan2(mouth - small, 2 * h)
        t = small / 2 * math.cos(alpha) * share()

        def solid(k):
            rise = small / 2 / math.tan(alpha)
            top = h + t / math.sin(alpha) + small
            finished = cone(0.0, (t / math.sin(alpha) - rise) * k, (top + rise - t / math.sin(alpha)) * math.tan(alpha) * k, top * k)
            return volume(cut(cone(small / 2 * k, 0, mouth / 2 * k, h * k), finished))
        return dict(form=0, diameter=mouth, diameter_small=small, depth=h, thickness=t), solid
    r, alpha = size(), math.radians(angle(5, 85))
    t = r * share()

    def solid(k):
        shell = cut((3, occ.addSphere(0, 0, 0, r * k)), (3, occ.addSphere(0, 0, 0, (r - t) * k)))
        return volume(common(shell, cone(0.0, 0.0, 1.5 * r * k * math.tan(alpha), 1.5 * r * k)))
    return dict(form=1, diameter=2 * r * math.sin(alpha), radius=r, thickness=t), solid


def dam(ends):
    """A block with drafted sides; its ends upright, drafted too, wedges, or half cones as wide as the dam at any height."""
    w, h = size(), size(0.05, 10)
    l = w + size() if ends == 'rounded' else size()
    beta = 0.0 if rng.random() < 0.1 else min(88.0, math.degrees(math.atan(share() * (min(l, w) if ends == 'drafted' else w) / (2 * h))))
    lean = h * math.tan(math.radians(beta))
    runout = l * share() / 2

    def ridge(k, width, length, is_across):
        """A trapezoid of width at the base, drafted, drawn out to length."""
        half, top, z, far = width / 2 * k, (width / 2 - (runout if is_across and ends == 'tapered' else lean)) * k, h * k, length / 2 * k
        if is_across:
            return prism(polygon([(-half, -far, 0), (half, -far, 0), (top, -far, z), (-top, -far, z)]), 0, 2 * far, 0)
        return prism(polygon([(-far, -half, 0), (-far, half, 0), (-far, top, z), (-far, -top, z)]), 2 * far, 0, 0)

    def solid(k):
        if ends == 'square':
            return volume(ridge(k, w, l, False))
        if ends in ('drafted', 'tapered'):
            return volume(common(ridge(k, w, l * 1.5, False), ridge(k, l, w * 1.5, True)))
        rounds = [cone(w / 2 * k, 0, (w / 2 - lean) * k, h * k, math.pi) for _ in range(2)]
        return volume(ridge(k, w, l - w, False), *rounds)
    told = dict(runout=runout) if ends == 'tapered' else {}
    return dict(length=l, width=w, height=h, draft=beta, ends=('square', 'drafted', 'rounded', 'tapered').index(ends), **told), solid


def recess(form):
    """A block less the block with the recess; the recess by its primitive."""
    index = ('box', 'cylinder', 'cone', 'ellipsoid', 'cap').index(form)
    if form in ('box', 'ellipsoid'):
        l, w, d = size(), size(), size()
        fields = dict(form=index, length=l, width=w, depth=d)
        if form == 'box':
            def solid(k):
                block = box(-l * k, -w * k, -2 * d * k, l * k, w * k, 0)
                sunk = cut(box(-l * k, -w * k, -2 * d * k, l * k, w * k, 0), box(-l / 2 * k, -w / 2 * k, -d * k, l / 2 * k, w / 2 * k, 0))
                return volume(block) - volume(sunk)
            return fields, solid

        def solid(k):
            eighth = (3, occ.addSphere(0, 0, 0, 1, -1, -math.pi / 2, 0, math.pi / 2))
            occ.dilate([eighth], 0, 0, 0, l / 2 * k, w / 2 * k, d * k)
            return 4 * volume(eighth)
        return fields, solid
    diameter = size()
    d = diameter / 2 * share() if form == 'cap' else size()

    def solid(k):
        if form == 'cylinder':
            return volume(cylinder(diameter / 2 * k, -d * k, 0))
        if form == 'cone':
            return volume(cone(0.0, -d * k, diameter / 2 * k, 0))
        # The sphere through the mouth's circle and the floor: its centre is as far from the one as from the other.
        up = ((diameter / 2) ** 2 - d ** 2) / (2 * d)
        sphere = (3, occ.addSphere(0, 0, up * k, (up + d) * k))
        return volume(common(sphere, box(-diameter * k, -diameter * k, -2 * d * k, diameter * k, diameter * k, 0)))
    return dict(form=index, diameter=diameter, depth=d), solid


def groove(form):
    """A block less the two sides of the groove, each leaning half the included angle from the edge of the root."""
    l, d = size(), size(0.05, 10)
    g = size(0.05, 5) if form != 'v' else 0.0
    beta = angle(2, 150) if form != 'slit' else 0.0
    half = math.radians(beta) / 2

    def solid(k):
        wide = (g / 2 + d * math.tan(half)) * k
        reach = 4 * (wide + d * k + l * k)
        sides = [half_space((0, side * g / 2 * k, -d * k), (0, side * math.cos(half), -math.sin(half)), reach) for side in (-1, 1)]
        return volume(cut(box(0, -1.5 * wide, -d * k, l * k, 1.5 * wide, 0), *sides))
    return dict(length=l, depth=d, gap=g, angle=beta), solid


# Every option of every kind has a row, so that a run of any length goes through all of them in turn.
KINDS = {
    'edge-nick': [(edge_nick, 'square'), (edge_nick, 'tapered')],
    'worn-corner': [(worn_corner, form) for form in ('straight', *FILLETED, 'outer', 'bore')],
    'sidewall': [(sidewall,)],
    'face': [(face_build_up, 'rectangle'), (face_build_up, 'disc'), (face_build_up, 'area')],
    'rib': [(rib, 'crest', 0)] + [(rib, corners, wraps) for corners in ('square', 'rounded') for wraps in (0, 1, 2)],
    'bore': [(bore, 'worn'), (bore, 'build')],
    'seat': [(seat, 'cone'), (seat, 'sphere')],
    'pin': [(pin, 'worn'), (pin, 'build')],
    'dam': [(dam, 'square'), (dam, 'drafted'), (dam, 'rounded'), (dam, 'tapered')],
    'recess': [(recess, form) for form in ('box', 'cylinder', 'cone', 'ellipsoid', 'cap')],
    'groove': [(groove, 'v'), (groove, 'gap and v'), (groove, 'slit')],
}


def draw_cases(count):
    cases = []
    for kind, variants in KINDS.items():
        for i in range(count):
            draw, *arguments = variants[i % len(variants)]
            fields, solid = draw(*arguments)
            cases.append((kind, fields, solid, FILLETED.get(arguments[0] if arguments else None, TOLERANCE)))
    return cases


def ask(probe, cases):
    lines = [' '.join([kind] + ['%s=%.17g' % pair for pair in fields.items()]) for kind, fields, _, _ in cases]
    run = subprocess.run([*WRAPPER, probe], input='\n'.join(lines) + '\n', capture_output=True, text=True, check=True)
    return lines, run.stdout.splitlines()


def find_gaps(probe, cases):
    """What the program has and no shape here draws: a kind, a field, an option."""
    gaps = []
    for line in subprocess.run([*WRAPPER, probe, 'kinds'], capture_output=True, text=True, check=True).stdout.splitlines():
        kind, *fields = line.split()
        drawn = [case[1] for case in cases if case[0] == kind]
        for field in fields:
            name, _, options = field.partition(':')
            values = {shape.get(name) for shape in drawn} - {None}
            if not values or (options and len(values) < len(options.split(','))):
                gaps.append('%s: not every %s is drawn here' % (kind, name))
    return gaps


def main():
    probe, count, seed = sys.argv[1], int(sys.argv[2]), int(sys.argv[3]) if len(sys.argv) > 3 else 20260101
    rng.seed(seed)
    gmsh.initialize()
    gmsh.option.setNumber('General.Terminal', 0)
    cases = draw_cases(count)
    failed = 0
    for gap in find_gaps(probe, cases):
        print(gap)
        failed += 1
    lines, answers = ask(probe, cases)
    worst = {}
    if len(answers) != len(cases):
        print('%d answers to %d shapes' % (len(answers), len(cases)))
        failed += 1
    for (kind, fields, solid, tolerance), line, answer in zip(cases, lines, answers):
        word, what = answer.split()
        if word != 'volume':
            print('%s: a valid shape was refused: %s' % (line, what))
            failed += 1
            continue
        gmsh.clear()
        # The modeller works to 1e-7 of its unit: no size of the shape is below a unit there.
        k = 1.0 / min(value for name, value in fields.items() if value > 0 and name not in NO_LENGTHS)
        error = abs(float(what) * k ** 3 / solid(k) - 1.0)
        group = kind if tolerance == TOLERANCE else kind + ', filleted'
        worst[group] = max(worst.get(group, (0.0, '')), (error, line))
        if not error <= tolerance:
            print('%s: %s mm³, the solid %.9g' % (line, what, solid(k) / k ** 3))
            failed += 1
    for group, (error, line) in worst.items():
        print('%-21s worst %.1e: %s' % (group, error, line))
    gmsh.finalize()
    print('%d passed, %d failed' % (len(cases) - failed, failed))
    return 1 if failed else 0


if __name__ == '__main__':
    sys.exit(main())
