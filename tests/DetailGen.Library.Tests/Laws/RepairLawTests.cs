using CsCheck;
using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Solving;
using DetailGen.Library.Reports;
using DetailGen.Testing;

namespace DetailGen.Library.Tests.Laws;

/// <summary>What a contradiction proposes, against trying: ranges with one size free, every word of every choice, every smaller set of changes.</summary>
public class RepairLawTests
{
    private static Catalogue Catalogue => AnyPreset.Office.Catalogue;

    [Fact]
    public void Every_repair_works_is_the_nearest_and_none_is_missing() => AnyPreset.Contradictory.Always(
        any => any.AsFile(path =>
        {
            var report = DetailLibrary.Check(new([path], []));
            Assert.Equal(1, report.Status);
            Assert.NotNull(report.Details[0].Conflict);
            var repairs = report.Details[0].Conflict!.Repairs;
            foreach (var repair in repairs)
            {
                var mended = DetailLibrary.Check(new([path], [.. repair.Set.Select(one => $"{one.Key}={one.Value}")]));
                Assert.True(mended.Status == 0, $"{Written(repair)} leaves status {mended.Status}");
            }

            var preset = any.Read();
            var singles = Sizes(preset).Concat(Words(preset)).Concat(Targets(preset)).Concat(Materials(preset)).ToList();
            var told = repairs.Where(repair => repair.Set.Count == 1).Select(Written).ToList();
            if (singles.Count > 0 || told.Count > 0)
            {
                Assert.Equal(singles.Order(StringComparer.Ordinal), told.Select(NoFigure).Order(StringComparer.Ordinal));
                Assert.All(repairs.SelectMany(repair => repair.Set).Where(one => one.Key.StartsWith("target.", StringComparison.Ordinal)), one => BestTarget(preset, one));
            }
            else
            {
                AreFewest(preset, repairs);
            }
        }), cases: 25);

    /// <summary>For each size that is set, the next below and above with which the rest holds.</summary>
    private static IEnumerable<string> Sizes(Preset preset)
    {
        foreach (var given in preset.Set.Where(given => given.Value.Unit != Unit.Choice))
        {
            if (DetailSolver.Ranges(Free(preset, [given.Key]), Catalogue, [given.Key], given.Key) is not [{ } range])
            {
                continue;
            }

            Assert.True(range.Proven);
            var step = range.Step ?? 1;
            var below = range.Values.Where(piece => piece.Low < given.Value.Number).Select(piece => piece.High < given.Value.Number ? piece.High : given.Value.Number - Math.Max(1, (given.Value.Number - piece.Low) % step == 0 ? step : (given.Value.Number - piece.Low) % step));
            var above = range.Values.Where(piece => piece.High > given.Value.Number).Select(piece => piece.Low > given.Value.Number ? piece.Low : given.Value.Number + step - ((given.Value.Number - piece.Low) % step));
            foreach (var value in below.TakeLast(1).Concat(above.Take(1)))
            {
                yield return $"{given.Key}={Setting.Numeric(range.Unit, value)}";
            }
        }
    }

    private static IEnumerable<string> Words(Preset preset) =>
        from changed in Choices(preset) where Holds(changed.Preset) select $"{changed.Key}={changed.Word}";

    private static IEnumerable<(string Key, string Word, Preset Preset)> Choices(Preset preset)
    {
        foreach (var key in DetailSolver.Keys(preset, Catalogue))
        {
            if (preset.Components.SelectMany(component => component.Parameters).FirstOrDefault(one => one.Key == key) is not { Unit: Unit.Choice } parameter)
            {
                continue;
            }

            foreach (var word in Others(preset, key, parameter))
            {
                yield return word;
            }
        }
    }

    private static IEnumerable<(string Key, string Word, Preset Preset)> Others(Preset preset, string key, Parameter parameter)
    {
        var taken = preset.Set.FirstOrDefault(given => given.Key == key)?.Value.Word;
        foreach (var word in parameter.Options.Where(word => word != taken))
        {
            var changed = Free(preset, [key]);
            changed = changed with { Set = [.. changed.Set, new Given(key, Setting.Choice(word), word, parameter.At, FromBase: true)] };
            if (DetailSolver.Check(changed, Catalogue).IsGood)
            {
                yield return (key, word, changed);
            }
        }
    }

    private static IEnumerable<string> Targets(Preset preset) =>
        from target in preset.Targets where Holds(preset with { Targets = [.. preset.Targets.Where(other => other != target)] }) select "target." + target.Key;

    private static IEnumerable<string> Materials(Preset preset) =>
        from slot in preset.Slots.Where(slot => slot.At is not null)
        where Holds(Usual(preset, slot))
        select $"materials.{slot.Slot.Key}={slot.Slot.Default}";

    private static Preset Usual(Preset preset, FilledSlot slot) =>
        preset with { Slots = [.. preset.Slots.Select(other => ReferenceEquals(other, slot) ? slot with { Filling = slot.Usual, At = null } : other)] };

    private static void BestTarget(Preset preset, KeyValuePair<string, string> one)
    {
        var better = decimal.Parse(one.Value.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture) - 0.001m;
        Assert.False(Holds(preset with { Targets = [.. preset.Targets.Select(target => "target." + target.Key == one.Key ? target with { Value = better } : target)] }), $"{one.Key} can be {better}.");
    }

    /// <summary>With fewer changes than any of these, nothing helps; and where there are changes at all, some are told.</summary>
    private static void AreFewest(Preset preset, IReadOnlyList<RepairReport> repairs)
    {
        var sizes = preset.Set.Where(given => given.Value.Unit != Unit.Choice).Select(given => given.Key).Concat(preset.Targets.Select(target => target.Key)).ToList();
        var departed = Choices(preset).Select(choice => choice.Preset).Concat(preset.Slots.Where(slot => slot.At is not null).Select(slot => Usual(preset, slot))).ToList();
        if (repairs.Count == 0)
        {
            Assert.All(departed.Prepend(preset), other => Assert.False(Holds(Free(other, sizes)), "Some change would help."));
            return;
        }

        Assert.Single(repairs.Select(repair => repair.Set.Count).Distinct());
        var count = repairs[0].Set.Count - 1;
        Assert.All(Sets(sizes, count), free => Assert.False(Holds(Free(preset, free)), $"Free {string.Join(", ", free)} is enough."));
        Assert.All(departed, other => Assert.All(Sets(sizes, count - 1), free => Assert.False(Holds(Free(other, free)), $"A choice or material and {string.Join(", ", free)} is enough.")));
    }

    private static IEnumerable<IReadOnlyList<string>> Sets(List<string> of, int count) =>
        Enumerable.Range(0, 1 << of.Count).Where(bits => System.Numerics.BitOperations.PopCount((uint)bits) == count)
            .Select(bits => (IReadOnlyList<string>)[.. of.Where((_, place) => ((bits >> place) & 1) == 1)]);

    private static Preset Free(Preset preset, IReadOnlyList<string> keys) => preset with
    {
        Set = [.. preset.Set.Where(given => !keys.Contains(given.Key))],
        Targets = [.. preset.Targets.Where(target => !keys.Contains(target.Key))],
    };

    private static bool Holds(Preset preset) => DetailSolver.Ranges(preset, Catalogue, []) is not null;

    private static string Written(RepairReport repair) => string.Join(", ", repair.Set.Select(one => $"{one.Key}={one.Value}"));

    // how near a target can be met is asked by itself
    private static string NoFigure(string written) => written.StartsWith("target.", StringComparison.Ordinal) ? written.Split('=')[0] : written;
}
