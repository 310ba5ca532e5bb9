"""The plan of a job, evaluated slowly and independently: what ``assess.py`` is for the findings this is for what is done about them.

It shares no code and no method with the library. Every value with an uncertainty is a chain from the readings on, which ``assess.propagate`` evaluates again
for every source that is moved. Ways to machine the block, pairs of pistons and bores, and stacks of shims are found by trying all of them.

Numbers stand under the report's keys, with the words and yes or no that a decision gives. Not covered, and refused: findings by eye of a bore, because what is done
about a bore is told from its decisions alone here.
"""

from fractions import Fraction
from itertools import combinations_with_replacement, permutations, product

import assess
from assess import EQUAL, ONE, ZERO, Errors, Refused, grown, half_width, length, mp, mpf, pure, real, temperature

K_PROVEN = mpf("1.65")
BY_VALUE = ("simple_acceptance", "simple_acceptance_by_ratio")
MASS = {"g": Fraction(1), "kg": Fraction(1000), "oz": Fraction("28.349523125")}
VOLUME = {"cm3": Fraction(1), "cc": Fraction(1), "ml": Fraction(1), "l": Fraction(1000)}
ROUGHNESS = {"um": Fraction(1), "mm": Fraction(1000)}


def mm(text):
    return real(length(text))


def grams(text):
    return assess.convert(text, MASS)


def cm3(text):
    return real(assess.convert(text, VOLUME))


def each_once(numbers):
    if len(set(numbers)) != len(numbers):
        raise Refused("a cylinder stands twice")
    return numbers


class Plan:
    """The plan of a job; `cylinders` are the reports of its cylinders."""

    def __init__(self, job, cylinders):
        self.job, self.form = job, job.document["plan"]
        self.wanted = self.wanted_clearance()
        self.pistons = [self.new_piston(k, form) for k, form in enumerate(self.form.get("pistons", []))]
        self.work = {int(c["number"]): {"number": c["number"], **bore_work(job, c)} for c in cylinders}
        self.cylinders = {int(c["number"]): c for c in cylinders}
        self.finishes = {}

    def report(self):
        out = {}
        if self.wanted:
            out["wanted"] = {"min_mm": self.wanted["min"], "max_mm": self.wanted["max"], "target_mm": self.wanted["target"]}
        if self.pistons:
            out["pistons"] = [self.piston_report(p) for p in self.pistons]
        if "machining" in self.form:
            out.update(self.machining(self.form["machining"]))
        found = self.matching()
        if found:
            out["matching"] = found
        for name, made in (("sleeves", self.sleeves), ("liners", liners), ("rings", self.rings), ("gasket", gasket), ("masses", masses),
                           ("finish", self.finish)):
            if name in self.form:
                out[name] = made(self.form[name])
        return {"cylinders": list(self.work.values()), **out}

    # ------------------------------------------------------------------------------------------------------- what is wanted, what there is

    def wanted_clearance(self):
        job = self.job
        if "wanted_clearance" in self.form:
            limit = assess.read_limit(self.form["wanted_clearance"])
        elif any("bench_clearance" in own for _, own in job.own_limits):
            return None
        else:
            limit = job.limits.get("bench_clearance")
        if not limit or limit["reference_temperature"] != 20 or not {"min", "max"} <= set(limit):
            return None
        target = mm(self.form["target_clearance"]) if "target_clearance" in self.form else (limit["min"] + limit["max"]) / 2
        return {**limit, "target": target}

    def surface(self):
        return self.wanted["over"] if self.wanted else "bare_metal"

    def new_piston(self, k, form):
        name = form["name"].strip()
        readings = [self.job.piston_reading(r, f"/plan/pistons/{k}/readings/{j}", name) for j, r in enumerate(form["readings"])]
        return self.sized(assess.Piston(form["state"], readings), name=name, form=form)

    def sized(self, piston, **more):
        """A piston with the value that enters its clearance, and the gauge of that."""
        value = assess.surfaces(self.job, piston).get(self.surface()) if piston else None
        gauges = [piston.readings[value[1]].gauge] if value else []
        return {"piston": piston, "value": value, "gauges": gauges, **more}

    def piston_size(self, sized, err):
        return assess.piston_values(self.job, sized["piston"], err)[sized["value"]]

    def piston_report(self, sized):
        values, contributions = assess.propagate(lambda err: assess.piston_values(self.job, sized["piston"], err))
        state = lambda name: assess.measured(values[name], contributions[name])
        sizes = []
        for i, r in enumerate(sized["piston"].readings):
            entry = {"height_mm": r.height, "datum": r.datum, "angle_deg": r.angle, "over": r.over, "size": state(("size", i))}
            sizes.append({**entry, **({"bare_size": state(("bare_size", i))} if ("bare_size", i) in values else {})})
        form = sized["form"]
        more = {"oversize_mm": mm(form["oversize"])} if "oversize" in form else {}
        return {"name": sized["name"], "sizes": sizes, **more, **({"mass_g": grams(form["mass"])} if "mass" in form else {})}

    def bore_size(self, bore):
        """The size of a bore as a chain."""
        weights = assess.reductions(self.job, bore)
        return (lambda err: assess.bore_values(self.job, bore, weights, err)["size"]) if "size" in weights else None

    def kept_bore(self, number):
        cylinder = self.job.cylinders.get(number)
        return cylinder.bore if cylinder else None

    def named(self, name):
        return next(p for p in self.pistons if p["name"] == name.strip())

    # ----------------------------------------------------------------------------------------------------------------------- machining

    def machining(self, form):
        if self.job.target:
            raise Refused("a choke is not bored straight")
        read = [n for n in self.job.numbers() if self.kept_bore(n) and self.kept_bore(n).places]
        if not read:
            return {}
        needs = [self.need(form, number) for number in read]
        steps = [self.step(form, step) for step in form["steps"]]
        ways = Ways(self.job, form, needs)
        ways.left = {number for number, work in self.work.items() if work.get("bore") == "leave"}
        choices = ways.choices()
        asked = length(form["chosen_oversize"]) if "chosen_oversize" in form else None
        serves = lambda c: not c["against"] and all(asked is None or same(asked, a.get("oversize_mm", asked)) for a in c["actions"])
        chosen = next((k for k, c in enumerate(choices) if serves(c)), None)
        shown = [{name: c[name] for name in ("way", "price", "actions")} for c in choices]
        report = {"needs": needs, "steps": steps, "choices": shown, "order": boring_order(read)}
        if chosen is None:
            return {"oversizes": report}
        out = {"oversizes": {**report, "chosen": chosen}}
        if any(w.get("bore") == "bore" for w in self.work.values()):
            for action in choices[chosen]["actions"]:
                if action["work"] == "leave":
                    continue
                self.work[action["cylinder"]].update({"bore": action["work"], "oversize_mm": action["oversize_mm"], "piston": "replace"})
            targets = self.targets(form, choices[chosen]["actions"])
            out.update({"targets": targets} if targets else {})
        return out

    def need(self, form, number):
        job, bore = self.job, self.kept_bore(number)
        unworn = mm(form["unworn"]) if "unworn" in form else job.nominal
        marks = mm(form["tool_marks"])
        place = assess.largest(assess.place_sizes(job, bore, Errors()), range(len(bore.places)))

        def chain(err):
            widest = assess.place_sizes(job, bore, err)[place]
            # worn alike all round, half of the wear on each side; or all of it on one side, and a bar about the old axis cuts twice that
            one_sided = unworn + 2 * (widest - unworn) if widest > unworn else widest
            return {"least": widest + marks, "used": one_sided + marks}

        values, contributions = assess.propagate(chain)
        k = ZERO if job.rule in BY_VALUE else K_PROVEN
        needed = values["used"] + k * assess.standard_uncertainty(contributions["used"])
        out = {"cylinder": number, "clean_up_least": assess.measured(values["least"], contributions["least"]),
               "clean_up": assess.measured(values["used"], contributions["used"]), "needed_mm": needed}
        walls = form.get("walls", {"readings": []})
        left = [mm(r["thickness"]) - mm(walls["permissible_error"]) for r in walls["readings"] if int(r["cylinder"]) == number]
        if left:
            # the thinnest place decides: what may go on each side is what is above the least
            out["largest_by_walls_mm"] = unworn + 2 * (min(left) - mm(walls["least"]))
        return out

    def step(self, form, step):
        oversize = mm(step.get("oversize", "0 mm"))
        bore = self.job.nominal + oversize
        out = {"oversize_mm": oversize, "bore_mm": bore}
        if "chamber" in form:
            out["compression_ratio"] = compression_ratio(form["chamber"], bore)
        if "kept_ring_gap" in form:
            out["kept_ring_gap_mm"] = mm(form["kept_ring_gap"]) + mp.pi * oversize
        return {**out, **({"more_mass_g": grams(step["more_mass"])} if "more_mass" in step else {})}

    def targets(self, form, actions):
        if not self.wanted:
            return []
        actions = [a for a in actions if a["work"] != "leave"]
        given = self.form.get("matching", {}).get("fixed", [])
        taken = {a["cylinder"]: self.named(p["piston"]) for a in actions for p in given if int(p["cylinder"]) == a["cylinder"]}
        for action in actions:
            if action["cylinder"] in taken:
                continue
            free = [p for p in self.pistons if all(p is not other for other in taken.values())]
            fits = [p for p in free if same(mm(p["form"].get("oversize", "0 mm")), action["oversize_mm"])]
            if fits:
                taken[action["cylinder"]] = fits[0]
        out = []
        for action in actions:
            piston = taken.get(action["cylinder"])
            if piston:
                self.work[action["cylinder"]]["new_piston"] = piston["name"]
            if piston and piston["value"]:
                out.append(self.target(form, action["cylinder"], piston))
        return out

    def target(self, form, number, piston):
        gauging = form.get("gauging")

        def chain(err):
            finish = self.piston_size(piston, err) + self.wanted["target"]
            sizes = {"finish": finish, "boring": finish - mm(form["honing"])}
            return {**sizes, **({("dial", n): self.dial(gauging, size, err) for n, size in sizes.items()} if gauging else {})}

        values, contributions = assess.propagate(chain)
        state = lambda name: assess.measured(values[name], contributions[name])
        self.finishes[number] = lambda err: self.piston_size(piston, err) + self.wanted["target"]
        out = {"cylinder": number, "piston": piston["name"], "finish": state("finish"), "boring": state("boring"),
               "tolerance_mm": mm(form["finish_tolerance"])}
        if gauging:
            out["dial"] = {"gauge": gauging["gauge"], "block_temperature_c": real(temperature(gauging["block_temperature"])),
                           "gauge_temperature_c": self.job.gauge_temperature(gauging),
                           "boring": state(("dial", "boring")), "finish": state(("dial", "finish"))}
        return out

    def dial(self, form, size, err):
        """How far the warm bore is beyond what the gauge spans with its needle at zero."""
        job, gauge = self.job, self.job.bore_gauge(form["gauge"])
        at = lambda t: grown(gauge.material, t, err, job.thermometer)
        span = assess.setting_size(job, gauge.setting, err) / at(gauge.setting.temperature) * at(job.gauge_temperature(form))
        return size * grown(job.bore_material, real(temperature(form["block_temperature"])), err, job.thermometer) - span

    # ------------------------------------------------------------------------------------------------------------------------ matching

    def matching(self):
        form = self.form.get("matching", {})
        asked = each_once([int(n) for n in form.get("cylinders", [])])
        # a bore that is machined does not keep the size that was read
        asked = [n for n in asked if "oversize_mm" not in self.work[n]]
        if not form.get("cylinders"):
            asked = [n for n, work in self.work.items() if work.get("bore") == "leave" and self.piston_goes(n)]
        bores = [(n, self.kept_bore(n)) for n in self.job.numbers() if n in asked and self.kept_bore(n)]
        found = self.pair(form, [(n, b) for n, b in bores if self.bore_size(b)])
        for pair in found["pairs"] if found else []:
            self.work[pair["cylinder"]].update({"piston": "replace", "new_piston": pair["piston"]})
        return found

    def piston_goes(self, number):
        """Does a decision send the piston of a bore that stays away?"""
        report = self.cylinders[number]
        own = report.get("piston", {}).get("decisions", []) + [
            d for d in report.get("clearance", {}).get("decisions", []) if d["of"] in ("bench_clearance", "smallest_clearance")]
        return any(d["result"] == "does not conform" for d in own)

    def pair(self, form, bores):
        """Every choice of pistons in order: first the worst pair is as probable as it can be, then the sum of squares is smallest."""
        pistons = [p for p in self.pistons if p["value"]]
        if not bores or not self.wanted or len(pistons) < len(bores):
            return None
        grades = {int(g["cylinder"]): g["grade"] for g in form.get("bore_grades", [])}
        pairs_of = lambda name: {(int(p["cylinder"]), p["piston"].strip()) for p in form.get(name, [])}
        fixed, forbidden = ({(n, p) for n, p in pairs_of(name) if n in dict(bores)} for name in ("fixed", "forbidden"))
        known = lambda chain: (lambda v, c: (v["x"], assess.standard_uncertainty(c["x"])))(*assess.propagate(lambda err: {"x": chain(err)}))
        sizes = [known(self.bore_size(b)) for _, b in bores]
        given = [known(lambda err, p=p: self.piston_size(p, err)) for p in pistons]

        def outside(i, j):
            clearance, u = sizes[i][0] - given[j][0], mp.hypot(sizes[i][1], given[j][1])
            return mp.ncdf((self.wanted["min"] - clearance) / u) + mp.ncdf((clearance - self.wanted["max"]) / u)

        out = [[outside(i, j) for j in range(len(pistons))] for i in range(len(bores))]
        merit = lambda choice: (max(out[i][j] for i, j in enumerate(choice)),
                                sum((sizes[i][0] - given[j][0] - self.wanted["target"]) ** 2 for i, j in enumerate(choice)))

        def may(i, j):
            grade = pistons[j]["form"].get("grade")
            same = None in (grade, grades.get(bores[i][0])) or grade.strip() == grades[bores[i][0]].strip()
            return same and (bores[i][0], pistons[j]["name"]) not in forbidden

        mass = lambda j: grams(pistons[j]["form"]["mass"]) if "mass" in pistons[j]["form"] else None
        spread = lambda choice: max(map(mass, choice)) - min(map(mass, choice)) if None not in map(mass, choice) else None
        band = grams(form["mass_band"]) if "mass_band" in form else None

        def allowed(choice):
            stands = {(bores[i][0], pistons[j]["name"]) for i, j in enumerate(choice)}
            return all(may(i, j) for i, j in enumerate(choice)) and fixed <= stands and (band is None or spread(choice) <= band)

        choices = [c for c in permutations(range(len(pistons)), len(bores)) if allowed(c)]
        if not choices:
            return None
        best = min(choices, key=merit)
        listed = merit(tuple(range(len(bores))))
        report = {"pairs": [self.pair_report(*bores[i], pistons[j]) for i, j in enumerate(best)],
                  "spare": [p["name"] for j, p in enumerate(pistons) if j not in best],
                  "worst_probability": ONE - merit(best)[0], "sum_of_squares_mm2": merit(best)[1],
                  "worst_probability_as_listed": ONE - listed[0], "sum_of_squares_as_listed_mm2": listed[1]}
        by_grade = self.by_grade([n for n, _ in bores], [p["name"] for p in pistons], may, fixed)
        if by_grade:
            report["worst_probability_by_grade"] = ONE - merit(by_grade)[0]
        return {**report, **({"mass_spread_g": spread(best)} if spread(best) is not None else {})}

    @staticmethod
    def by_grade(bores, pistons, may, fixed):
        """Each bore in turn takes the first free piston that may go in it; fixed pairs first."""
        held = {bores.index(n): pistons.index(p) for n, p in fixed}
        for i in range(len(bores)):
            if i not in held:
                free = [j for j in range(len(pistons)) if j not in held.values() and may(i, j)]
                if not free:
                    return None
                held[i] = free[0]
        return tuple(held[i] for i in range(len(bores)))

    def pair_report(self, number, bore, piston):
        size = self.bore_size(bore)
        values, contributions = assess.propagate(lambda err: {"clearance": size(err) - self.piston_size(piston, err)})
        decided = self.decide("matched_clearance", values["clearance"], contributions["clearance"], bore, piston)
        return {"cylinder": number, "piston": piston["name"], "clearance": assess.measured(values["clearance"], contributions["clearance"]),
                "deviation_mm": values["clearance"] - self.wanted["target"], "decision": decided}

    def decide(self, of, value, contributions, bore, piston):
        """A clearance against what is wanted, where that is meant for these states."""
        limit = self.wanted
        if piston["piston"].state not in limit["piston_states"] or bore.clamping not in limit["clamping"]:
            return assess.unjudged(of, limit)
        stale = assess.any_overdue(bore.gauge, *piston["gauges"])
        return assess.decision(self.job, of, value, contributions, limit, True, stale, limit)

    # ------------------------------------------------------------------------------------------------------------------- smaller decisions

    def sleeves(self, form):
        job = self.job
        sleeve, block = (job.named(job.materials, form[name]) for name in ("material", "block_material"))
        least, most = mm(form["interference"]["min"]), mm(form["interference"]["max"])
        aim = mm(form["target"]) if "target" in form else (least + most) / 2
        holds = aim - (mm(form["smoothing"]) if "smoothing" in form else ZERO)
        heated = real(temperature(form["block_heated_to"]))
        walls = job.document.get("running", {}).get("bore_temperature")
        still, out = Errors(), []
        for k, each in enumerate(form["each"]):
            source = job.source(("sleeve", k), half_width(length(each["permissible_error"])), f"outside of sleeve {k}",
                                f"/plan/sleeves/each/{k}/permissible_error")
            read = [length(typed) for typed in each["outside"]]

            def chain(err):
                outside = real(assess.mean(read)) + err(source)
                hole = outside - aim
                cold = (grown(sleeve, real(temperature(form["sleeve_chilled_to"])), err) if "sleeve_chilled_to" in form
                        else grown(sleeve, job.shop_temperature, err, job.thermometer))
                return {"outside": outside, "hole": hole, "assembly_clearance": hole * grown(block, heated, err) - outside * cold}

            values, contributions = assess.propagate(chain)
            entry = {"cylinder": int(each["cylinder"]), **{n: assess.measured(values[n], contributions[n]) for n in values},
                     "hole_least_mm": values["outside"] - most, "hole_most_mm": values["outside"] - least,
                     "slides_in": bool(values["assembly_clearance"] >= mm(form["least_clearance"]) - EQUAL)}
            if walls:
                grows = lambda t: grown(sleeve, t, still) - grown(block, t, still)
                entry["running_interference_mm"] = [holds + values["outside"] * grows(real(temperature(walls[end]))) for end in ("min", "max")]
            out.append(entry)
        return out

    def with_error(self, key, form, path):
        """The error of a gap as a source."""
        return self.job.source(("gap", key), half_width(length(form["permissible_error"])), f"gap {key}", path)

    def rings(self, entries):
        return [self.ring(k, form) for k, form in enumerate(entries)]

    def ring(self, k, form):
        number, gauge = int(form["cylinder"]), mm(form["read_in"]) if "read_in" in form else None
        target = mm(form["min"]) + (mm(form["allowance"]) if "allowance" in form else ZERO)
        out = {"cylinder": number, "ring": form["ring"].strip(), "target_mm": target}
        source = self.with_error(k, form, f"/plan/rings/{k}/permissible_error")
        if "oversize_mm" in self.work[number]:
            bore = self.finishes.get(number)
        else:
            bore = self.bore_size(self.kept_bore(number)) if self.kept_bore(number) else None
        if gauge is not None and bore is None:
            return out
        # a closed ring keeps the length of its arc: the circumference grows and the gap with it
        chain = lambda err: {"gap": mm(form["gap"]) + err(source) + (mp.pi * (bore(err) - gauge) if gauge is not None else ZERO)}
        values, contributions = assess.propagate(chain)
        gap = values["gap"]
        outcome = "file" if gap < mm(form["min"]) - EQUAL else "too_wide" if "max" in form and gap > mm(form["max"]) + EQUAL else "fits"
        off = target - gap if outcome == "file" else ZERO
        return {**out, "gap": assess.measured(gap, contributions["gap"]), "outcome": outcome, "file_off_mm": off, "each_end_mm": off / 2}

    # -------------------------------------------------------------------------------------------------------------------- after the work

    def finish(self, form):
        cylinders = [self.finished(k, entry) for k, entry in enumerate(form["cylinders"])]
        out = {"cylinders": [c["report"] for c in cylinders]}
        fitted = [(c["report"]["number"], c["bore"]) for c in cylinders
                  if c["report"]["stage"] != "bored" and "piston" in c["report"] and self.bore_size(c["bore"])]
        found = self.pair(self.form.get("matching", {}), sorted(fitted, key=lambda f: [c["report"]["number"] for c in cylinders].index(f[0])))
        if found:
            out["matching"] = found
        if any(c["report"]["result"] != "met" for c in cylinders) or len(cylinders) < len(self.work):
            out["result"] = "not proven"
        return out

    def finished(self, k, form):
        number, path = int(form["number"]), f"/plan/finish/cylinders/{k}"
        job = self.job.seen_by(number)
        job.limits = {name: limit for name, limit in job.limits.items() if name != "bore_size"}
        bore = job.bore(form["bore"], path + "/bore", f"finished {number}")
        report = assess.CylinderReport(job, assess.Cylinder(number, None, bore), seen=True).bore()
        if "piston" in form:
            piston = self.named(form["piston"])
        else:
            own = self.job.cylinders.get(number)
            piston = self.sized(own.piston if own else None)
        out = {"number": number, "stage": form["stage"], "bore": report, "decisions": [],
               **({"piston": piston["name"]} if "piston" in form else {})}
        size, sized = self.bore_size(bore), bool(piston["value"])
        if size and sized:
            out.update(self.against_target(form, size, bore, piston))
        if "gaps" in form:
            out["gaps"] = [self.finished_gap(number, gap, f"{path}/gaps/{j}") for j, gap in enumerate(form["gaps"])]
        if "surface" in form:
            out["surface"] = surface(self.form["surface"], form["surface"])
        return {"bore": bore, "report": {**out, "result": self.result(out)}}

    def against_target(self, form, size, bore, piston):
        machining, target = self.form.get("machining"), self.wanted["target"]

        def chain(err):
            own, other = size(err), self.piston_size(piston, err)
            return {"size": own, "clearance": own - other, "stock": other + target - own, "finish": other + target}

        values, contributions = assess.propagate(chain)
        decisions = []
        if form["stage"] != "bored":
            decisions.append(self.decide("finished_clearance", values["clearance"], contributions["clearance"], bore, piston))
        if machining and form["stage"] == "honed":
            half = mm(machining["finish_tolerance"])
            ends = {"min": values["finish"] - half, "max": values["finish"] + half, "reference_temperature": assess.REFERENCE}
            stale = assess.any_overdue(bore.gauge, *piston["gauges"])
            decisions.append(assess.decision(self.job, "finished_size", values["size"], contributions["size"], ends, True, stale, ends))
        state = lambda name: assess.measured(values[name], contributions[name])
        return {"clearance": state("clearance"), "stock": state("stock"), "decisions": decisions}

    def finished_gap(self, number, form, path):
        ring = next(r for r in self.form["rings"] if int(r["cylinder"]) == number and r["ring"].strip() == form["ring"].strip())
        source = self.with_error(path, ring, path)
        values, contributions = assess.propagate(lambda err: {"gap": mm(form["gap"]) + err(source)})
        limit = {**{end: mm(ring[end]) for end in ("min", "max") if end in ring}, "reference_temperature": assess.REFERENCE}
        found = assess.decision(self.job, "ring_gap", values["gap"], contributions["gap"], limit, True, False, {})
        return {"ring": form["ring"].strip(), "gap": assess.measured(values["gap"], contributions["gap"]), "decision": found}

    def result(self, found):
        """What a finished bore is, from its decisions and from the stock that is left."""
        if "stock" not in found:
            return "not proven"
        stock, clearance = found["stock"]["value_mm"], found["clearance"]["value_mm"]
        if found["stage"] == "bored":
            return "to be honed" if stock > 0 else "too large"
        decided, shape = found["decisions"][0]["result"], found["bore"]["decisions"]
        if decided == "conforms":
            return "met" if all(d["result"] == "conforms" for d in shape) else "not proven"
        if decided == "does not conform":
            return "hone on" if clearance < self.wanted["min"] or stock > 0 else "too large"
        return "not proven"


def bore_work(job, cylinder):
    """What the decisions of a bore ask for; nothing where they do not settle it."""
    form = next((c for c in job.document["cylinders"] if int(c["number"]) == int(cylinder["number"])), {})
    seen = {(f["what"], f["severity"]) for f in form.get("findings", []) if f["place"] in ("bore_wall", "ports", "liner_outside", "liner_flange")}
    if seen - {("scoring", "severe")}:
        raise Refused("of the findings of a bore only severe scoring is covered, which rejects it")
    results = [d["result"] for d in cylinder["bore"]["decisions"]] if "bore" in cylinder else ["none"]
    results += ["does not conform"] * len(seen)
    if "does not conform" in results:
        return {"bore": "replace" if "may_not_be_machined" in job.engine["bore"] else "bore"}
    return {"bore": "leave"} if all(r == "conforms" for r in results) else {}


class Ways:
    """Every way to bring the block back, each held against what the bores need."""

    ORDER = ("one_step", "step_by_bore", "step_and_sleeves", "sleeves_alone")

    def __init__(self, job, form, needs):
        self.form, self.needs = form, needs
        self.steps = form["steps"]
        self.bores = [job.nominal + mm(step.get("oversize", "0 mm")) for step in self.steps]

    def against(self, need, step):
        size = self.bores[step]
        out = ["not clean"] if need["needed_mm"] > size + EQUAL else []
        return out + (["wall"] if need.get("largest_by_walls_mm", size) < size - EQUAL else [])

    def against_step(self, step):
        largest = mm(self.form["largest_by_gasket"]) if "largest_by_gasket" in self.form else self.bores[step]
        return ["gasket"] if largest < self.bores[step] - EQUAL else []

    def way(self, name, actions, against):
        """`actions` are the work and the step of each bore."""
        cut = [(work, s) for work, s in actions if work != "leave"]
        for step, form in enumerate(self.steps):
            needed = sum(1 for _, s in cut if s == step)
            if "available" in form and needed > form["available"]:
                against = [*against, "pistons"]
        prices = [pure(self.steps[s]["price"]) + pure(self.form["boring_price"])
                  + (pure(self.form["sleeve_price"]) if work == "sleeve" else 0) for work, s in cut]
        shown = [{"cylinder": need["cylinder"], "work": work, **({} if work == "leave" else {"oversize_mm": mm(self.steps[s].get("oversize", "0 mm"))})}
                 for need, (work, s) in zip(self.needs, actions)]
        metal = sum((self.bores[s] for _, s in cut), ZERO)
        return {"way": name, "price": sum(prices, Fraction(0)), "actions": shown, "against": against,
                "rank": (bool(against), sum(prices), len({s for _, s in cut}), metal, self.ORDER.index(name))}

    def choices(self):
        steps, last = range(len(self.steps)), len(self.steps) - 1
        found = [self.way("one_step", [("bore", s)] * len(self.needs), self.against_step(s) + [a for n in self.needs for a in self.against(n, s)])
                 for s in steps]
        serves = lambda need: [s for s in steps if not self.against(need, s) + self.against_step(s)]
        own = [min(serves(need), default=None) for need in self.needs]
        found.append(self.way("step_by_bore", [("bore", last if s is None else s) for s in own], ["no step"] * own.count(None)))
        for s in steps if "sleeve_price" in self.form else []:
            held = [not self.against(need, s) for need in self.needs]
            never = [int(n) for n in self.form.get("no_sleeve_in", [])]
            against = self.against_step(s) + ["no sleeve" for need, ok in zip(self.needs, held) if not ok and need["cylinder"] in never]
            if not all(held):
                found.append(self.way("step_and_sleeves", [("bore" if ok else "sleeve", s) for ok in held], against))
        stays = [need["cylinder"] in self.left for need in self.needs]
        if "sleeve_price" in self.form and mm(self.steps[0].get("oversize", "0 mm")) == 0 and any(stays) and not all(stays):
            never = [int(n) for n in self.form.get("no_sleeve_in", [])]
            against = self.against_step(0) + ["no sleeve" for need, stay in zip(self.needs, stays) if not stay and need["cylinder"] in never]
            found.append(self.way("sleeves_alone", [("leave" if stay else "sleeve", 0) for stay in stays], against))
        return sorted(found, key=lambda c: c["rank"])


def same(a, b):
    """Of two oversizes, nearer than a micrometre is the same one."""
    return abs(float(a) - float(b)) < 0.001


def boring_order(numbers):
    """So that the heat spreads: no neighbours one after the other, from four on."""
    if len(numbers) < 4:
        return numbers
    odd, even = numbers[0::2], numbers[1::2]
    return even + odd if len(numbers) == 4 else odd + even


def compression_ratio(form, bore):
    disc = lambda d, h: mp.pi / 4 * d * d * h / 1000
    opening = max(mm(form["gasket_bore"]), bore)
    left = cm3(form["head"]) + cm3(form["crown"]) + disc(opening, mm(form["gasket"])) + disc(bore, mm(form["deck_clearance"]))
    return ONE + disc(bore, mm(form["stroke"])) / left


def liners(form):
    """Every stack on every liner: the largest deviation first, then the fewest shims."""
    least, most = length(form["protrusion"]["min"]), length(form["protrusion"]["max"])
    shims = [(length(s["thickness"]), s.get("available")) for s in form["shims"]]
    stacks = [s for n in range(int(form["most_on_one"]) + 1) for s in combinations_with_replacement(range(len(shims)), n)]
    rows = [(length(e["flange"]), [length(d) for d in e["depths"]], length(e["cupping"]) if "cupping" in e else Fraction(0)) for e in form["each"]]
    over = lambda name, value: name in form and value > length(form[name])
    each = [{"cylinder": int(e["cylinder"]), "unevenness_mm": max(d) - min(d)} for e, (_, d, _) in zip(form["each"], rows)]
    if any(over("unevenness", max(d) - min(d)) or over("cupping", cup) for _, d, cup in rows):
        return {"each": each}
    places = lambda row, stack: [row[0] + sum(shims[s][0] for s in stack) - depth for depth in row[1]]
    served = [[s for s in stacks if all(least <= p <= most for p in places(row, s))] for row in rows]
    middle, best = (least + most) / 2, None
    for choice in product(*served):
        standing = [places(row, stack) for row, stack in zip(rows, choice)]
        steps = [abs(a[2] - b[0]) for a, b in zip(standing, standing[1:])]
        used = [sum(stack.count(s) for stack in choice) for s in range(len(shims))]
        if any(over("neighbours", step) for step in steps) or any(n is not None and u > n for u, (_, n) in zip(used, shims)):
            continue
        merit = (max(abs(p - middle) for places_ in standing for p in places_), sum(used))
        if best is None or merit < best[0]:
            best = merit, choice, standing, steps
    if best is None:
        return {"each": each}
    _, choice, standing, steps = best
    each = [{**e, "shims_mm": [shims[s][0] for s in stack], "lowest_mm": min(p), "highest_mm": max(p)} for e, stack, p in zip(each, choice, standing)]
    return {"each": each, **({"largest_step_mm": max(steps)} if steps else {})}


def gasket(form):
    """The largest protrusion chooses; what lies between two grades belongs to the later one."""
    read = {int(p["cylinder"]): assess.mean([length(r) for r in p["readings"]]) for p in form["pistons"]}
    decided = max(read, key=lambda n: read[n])
    ends = [length(g["to"]) for g in form["grades"]]
    place = sum(1 for end in ends[:-1] if read[decided] > end)
    grade, u = form["grades"][place], half_width(length(form["permissible_error"]))
    thickness, spread = length(grade["thickness"]), max(read.values()) - min(read.values())
    below = lambda limit: mp.fprod(mp.ncdf((real(limit) - real(p)) / u) for p in read.values())
    least = length(form["least_squish"]) if "least_squish" in form else None
    pistons = [{"cylinder": n, "protrusion_mm": p, "squish_mm": thickness - p, **({} if least is None else {"squish_is_met": thickness - p >= least})}
               for n, p in read.items()]
    return {"grade": grade["name"], "thickness_mm": thickness, "decided_by": decided, "pistons": pistons, "spread_mm": spread,
            **({"spread_is_met": spread <= length(form["spread"])} if "spread" in form else {}),
            "probability_below": below(ends[place - 1] if place else length(form["grades"][0]["from"])), "probability_above": ONE - below(ends[place])}


def masses(form):
    total = [sum((grams(p["mass"]) for p in e["parts"]), Fraction(0)) for e in form["each"]]
    most, each = min(total) + grams(form["band"]), []
    for entry, mass in zip(form["each"], total):
        left, cuts = mass, []
        for part in entry["parts"]:
            off = min(max(left - most, Fraction(0)), grams(part.get("removable", "0 g")))
            left -= off
            cuts += [{"part": part["part"].strip(), "off_g": off}] if off else []
        each.append({"cylinder": int(entry["cylinder"]), "mass_g": mass, **({"cuts": cuts} if cuts else {}), "left_g": left,
                     "over_g": max(left - most, Fraction(0))})
    return {"most_g": most, "each": each, "is_met": all(e["over_g"] == 0 for e in each)}


def surface(limits, read):
    """Values alone against their limits, in the order of the parameters."""
    of = {"rpk": "rpk", "rk": "rk", "rvk": "rvk", "mr1_percent": "mr1", "mr2_percent": "mr2", "crosshatch": "crosshatch"}
    number = lambda name, typed: (assess.convert(typed, ROUGHNESS) if name in ("rpk", "rk", "rvk")
                                  else assess.angle(typed) if name == "crosshatch" else pure(typed))
    out = []
    for name, word in of.items():
        ends = {end: number(name, typed) for end, typed in limits.get(name, {}).items()}
        if name not in read:
            out += [{"parameter": word, "finding": "not_given"}] if ends else []
            continue
        value = number(name, read[name])
        inside = ends.get("min", value) <= value <= ends.get("max", value)
        out.append({"parameter": word, "value": value, "finding": ("in" if inside else "out") if ends else "no_limit"})
    return out
