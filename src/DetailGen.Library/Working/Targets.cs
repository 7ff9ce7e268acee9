using DetailGen.Analysis.Heat;
using DetailGen.Details;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Solving;
using DetailGen.Library.Reports;
using DetailGen.Sections;

namespace DetailGen.Library.Working;

/// <summary>When the heat through a junction is simulated.</summary>
internal enum Simulation
{
    /// <summary>Where a target or the thermal sheet asks for it.</summary>
    Asked,

    Always,
    Never,
}

/// <summary>A detail that is solved as far as it can be, with its section and what was simulated.</summary>
/// <param name="Section">Null where it could not be solved.</param>
/// <param name="Heat">Null where nothing was simulated.</param>
internal sealed record Met(Solution Solution, Section? Section, JunctionHeat? Heat, IReadOnlyList<string> Warnings);

/// <summary>
/// Solves a preset and meets its targets on the heat through the junction: simulate, and where that falls short try one named size from thin to thick until it holds.
/// What is found is simulated, so it holds; that nothing is found says nothing of sizes that were not tried. Where the figures only rise or only fall along the sizes, those between two that
/// miss a target are not tried; else all are.
/// </summary>
internal static class Targets
{
    /// <summary>The size that is tightened: it thickens what covers the bridge, and little else hangs on it.</summary>
    private const string Tightened = "upstand.insulation";

    /// <summary>The first look at a size is as close as this, as a share of the coupling; what is taken is looked at again.</summary>
    private const double Coarse = 0.005;

    /// <summary>How much higher the temperature factor may prove on a closer look; an estimate at either.</summary>
    private const decimal FactorMargin = 0.005m;

    /// <summary>Up to so many values are tried one by one; of more, the thickest and three between are looked at first.</summary>
    private const int Many = 8;

    internal static Met Meet(Preset preset, Office office, Simulation when)
    {
        Target[] targets = [.. Simulated.TargetsOf(preset)];
        var solution = DetailSolver.Solve(preset, office.Catalogue);
        if (solution is not Solution.Solved solved)
        {
            return new(solution, null, null, []);
        }

        var section = SectionBuilder.Build(solved);
        if (when == Simulation.Never || (when == Simulation.Asked && targets.Length == 0 && !preset.Sheet.Companions.Contains(PresetShape.Thermal, StringComparer.Ordinal)))
        {
            return new(solved, section, null, []);
        }

        var heat = Simulate(section, Conditions(preset));
        var found = Found(heat, preset);
        return targets.All(found.Meets)
            ? new(found.Judge(solved), section, heat, heat.Warnings)
            : Tighten(preset, solved, targets, heat, office);
    }

    /// <summary>The figures that targets and rules go by.</summary>
    internal static Simulated Found(JunctionHeat heat, Preset preset) =>
        new((decimal)(preset.FrsiFilm == "heat-flow" ? heat.Factor : heat.MouldFactor).Value, (decimal)heat.PsiInternal.Upper);

    /// <summary>The best that a closer look might find: what fails by it need not be looked at more closely.</summary>
    private static Simulated AtBest(JunctionHeat heat, Preset preset) => new(Found(heat, preset).TemperatureFactor + FactorMargin, (decimal)heat.PsiInternal.Lower);

    /// <summary>The same of a solved detail, not as close.</summary>
    internal static Simulated AtAGlance(Solution.Solved solved) => Found(Simulate(SectionBuilder.Build(solved), new(WantedError: Coarse)), solved.Preset);

    internal static IReadOnlyList<TargetReport> Told(Worked worked) =>
    [
        .. worked.Preset.Targets.Select(target =>
        {
            var element = worked.Buildups.FirstOrDefault(one => target.Key == one.Buildup.Id + ".u-value");
            var reached = (decimal?)element?.UValue ?? (worked.Heat is null ? null : Found(worked.Heat, worked.Preset).Of(target.Key));
            var verdict = reached is not { } figure ? VerdictWords.ToConfirm : target.IsMetBy(figure) ? VerdictWords.Pass : VerdictWords.Fail;
            return new TargetReport(target.Key, target.Kind.AtLeast ? ">=" : "<=", (double)target.Value, (double?)reached, verdict);
        }),
    ];

    private static Met Tighten(Preset preset, Solution.Solved solved, Target[] targets, JunctionHeat drawn, Office office)
    {
        List<Simulated> found = [Found(drawn, preset)];
        Setting[] all = [.. Thicker(preset, solved, office)];
        var looked = new Dictionary<Setting, Glanced?>();
        Glanced? Look(Setting value) => looked.TryGetValue(value, out var known) ? known : looked[value] = Glance(preset, value, office);

        var spread = Spread(all);
        Simulated[] along = [AtBest(drawn, preset), .. spread.Select(Look).OfType<Glanced>().Select(one => one.AtBest)];
        var thin = spread.Take(TooThin(targets, along)).Select(value => value.Number).LastOrDefault();
        foreach (var value in IsHopeless(targets, along) ? [] : all.Where(value => value.Number > thin))
        {
            if (Look(value) is not { } thicker || !targets.All(thicker.AtBest.Meets))
            {
                continue;
            }

            var heat = Simulate(thicker.Section, Conditions(preset));
            if (targets.All(Found(heat, preset).Meets))
            {
                return new(Found(heat, preset).Judge(Simulated.Tightened(thicker.Solved, preset, Tightened, targets)), thicker.Section, heat, heat.Warnings);
            }

            found.Add(Found(heat, preset));
        }

        found.AddRange(looked.Values.OfType<Glanced>().Select(one => one.Found));
        var best = found.MinBy(one => Shortfall(targets, one))!;
        Target[] missed = [.. targets.Where(target => !best.Meets(target))];
        var tried = looked.Values.Count(one => one is not null);
        return new(Simulated.Unmet(preset, missed.Length > 0 ? missed : targets, best), null, null, [Messages.TargetsNotProven(missed.Select(target => target.Key), Tightened, tried, spread.Length > 0 ? all.Length : tried)]);
    }

    private static Glanced? Glance(Preset preset, Setting value, Office office)
    {
        var with = preset with { Set = [.. preset.Set, new Given(Tightened, value, value.ToString(), new Mark(preset.File, 1, 1), false)] };
        if (DetailSolver.Solve(with, office.Catalogue) is not Solution.Solved thicker)
        {
            return null;
        }

        var section = SectionBuilder.Build(thicker);
        var heat = Simulate(section, new(WantedError: Coarse));
        return new(thicker, section, Found(heat, preset), AtBest(heat, preset));
    }

    /// <summary>The thickest value and three between, where there are many.</summary>
    internal static T[] Spread<T>(IReadOnlyList<T> all) => all.Count <= Many ? [] : [.. Enumerable.Range(1, 4).Select(quarter => all[(all.Count * quarter / 4) - 1])];

    /// <summary>Along sizes spread from the least to the most no target is met, though each figure only rises or only falls: what lies between lies between in its figures too.</summary>
    internal static bool IsHopeless(IReadOnlyList<Target> targets, IReadOnlyList<Simulated> spread) => spread.Count == 5 && targets.Any(target =>
    {
        decimal[] figures = [.. spread.Select(one => one.Of(target.Key))];
        return !spread.Any(one => one.Meets(target)) && (figures.SequenceEqual(figures.Order()) || figures.SequenceEqual(figures.OrderDescending()));
    });

    /// <summary>Along the same sizes: how many of those spread, from the thinnest, miss a target on a figure that only gets better. What is thinner than the last of them misses it too.</summary>
    internal static int TooThin(IReadOnlyList<Target> targets, IReadOnlyList<Simulated> spread) => spread.Count < 5 ? 0 : targets.Max(target =>
    {
        decimal[] figures = [.. spread.Select(one => one.Of(target.Key))];
        var better = target.Kind.AtLeast ? figures.Order() : figures.OrderDescending();
        return figures.SequenceEqual(better) ? spread.Skip(1).TakeWhile(one => !one.Meets(target)).Count() : 0;
    });

    /// <summary>A size that was tried, with its figures on the safe side and at best.</summary>
    private sealed record Glanced(Solution.Solved Solved, Section Section, Simulated Found, Simulated AtBest);

    // Farther from the wish counts more, each target by its own measure; only the order of candidates hangs on it.
    private static decimal Shortfall(Target[] targets, Simulated found) =>
        targets.Where(target => !found.Meets(target)).Sum(target => Math.Abs(found.Of(target.Key) - target.Value));

    private static IEnumerable<Setting> Thicker(Preset preset, Solution.Solved solved, Office office)
    {
        if (preset.Set.Any(given => given.Key == Tightened) || solved.Find(Tightened)?.Value is not { } now
            || DetailSolver.Ranges(preset, office.Catalogue, [Tightened]) is not [var range])
        {
            return [];
        }

        return range.Values.SelectMany(piece => Steps(piece, range.Step)).Where(value => value > now.Number).Select(value => Setting.Numeric(range.Unit, value));
    }

    /// <summary>The values of a piece of a range, one by one.</summary>
    internal static IEnumerable<long> Steps((long Low, long High) piece, long? step)
    {
        for (var value = piece.Low; value <= piece.High; value += step ?? 1)
        {
            yield return value;
            if (step is null)
            {
                yield break;
            }
        }
    }

    // The temperature inside is told with the figures, though only that of the coldest surface hangs on it.
    private static HeatConditions Conditions(Preset preset) => new(Inside: InsideAir.Of(preset).Temperature);

    private static JunctionHeat Simulate(Section section, HeatConditions conditions) => JunctionHeat.Of(ThermalModelling.Of(section, conditions), conditions);
}
