using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;

namespace DetailGen.Details.Solving;

/// <summary>
/// Sizes of ties, fixings and dabs. What a model supposes of them goes by what is usual (<see cref="Supposition"/>), and by what is set once one of them is. So where a
/// target ends the range of such a size, the values beyond are tried one by one, each as if it were set.
/// </summary>
internal static class SupposedSizes
{
    /// <param name="posed">The problem of a preset, without wishes.</param>
    internal static IReadOnlyList<SizeRange> Widened(IReadOnlyList<SizeRange> ranges, DetailProblem problem, Func<Preset, DetailProblem> posed)
    {
        HashSet<string> supposed = [.. ((string[])["wall", "roof"]).SelectMany(element => Supposition.Of(problem.Situation, element)).SelectMany(one => one.Sizes).SelectMany(Keys)];
        return [.. ranges.Select(range => range is { Proven: true, Step: { } step } && supposed.Contains(range.Key) ? Widened(range, step, problem.Situation, posed) : range)];
    }

    private static IEnumerable<string> Keys(Supposed size) => new[] { size.Lesser, size.Greater }.OfType<string>();

    private static SizeRange Widened(SizeRange range, long step, Situation situation, Func<Preset, DetailProblem> posed)
    {
        var parameter = situation.Size(range.Key)!;
        var (low, lowStops) = Reached(range.Values[0].Low, -step, range.LowStops, parameter, situation.Preset, posed);
        var (high, highStops) = Reached(range.Values[^1].High, step, range.HighStops, parameter, situation.Preset, posed);
        List<(long Low, long High)> values = [.. range.Values];
        values[0] = values[0] with { Low = low };
        values[^1] = values[^1] with { High = high };
        return range with { Values = values, LowStops = lowStops, HighStops = highStops };
    }

    /// <summary>The last value that can be had on the way, and what forbids the next.</summary>
    private static (long End, IReadOnlyList<Member> Stops) Reached(long end, long step, IReadOnlyList<Member> stops, Parameter parameter, Preset preset, Func<Preset, DetailProblem> posed)
    {
        if (!stops.Any(stop => stop.Kind is MemberKind.Target or MemberKind.Rule))
        {
            return (end, stops);
        }

        for (var moved = false; ; moved = true)
        {
            var next = end + step;
            if (!parameter.Domain!.Holds(next))
            {
                return (end, moved ? FeasibleSizes.Stops(parameter, [], new Members(posed(preset))) : stops);
            }

            var tried = posed(With(preset, parameter, next));
            if (tried.Model.CanHold() is not true)
            {
                return (end, moved ? FeasibleSizes.Stops(parameter, [.. Against(tried).Where(tag => tag != "given:" + parameter.Key)], new Members(tried)) : stops);
            }

            end = next;
        }
    }

    private static IReadOnlyList<string> Against(DetailProblem tried) => tried.Model.Conflicts(1).Sets is [var tags, ..] ? tags : [];

    private static Preset With(Preset preset, Parameter parameter, long number)
    {
        var setting = Setting.Numeric(parameter.Unit, number);
        return preset with { Set = [.. preset.Set, new Given(parameter.Key, setting, setting.ToString(), new Mark(preset.File, 1, 1), false)] };
    }
}
