using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules.Language;
using DetailGen.Solver;

namespace DetailGen.Details.Solving;

/// <summary>
/// Finds what the author can change so that a detail can be had: sizes, choices, materials and targets; one of them, or where no single change helps as few as
/// it takes, with at most one choice or material among them.
/// </summary>
internal sealed class Mending(DetailProblem problem)
{
    private readonly Situation _situation = problem.Situation;
    private readonly List<string> _targets =
        [.. problem.Situation.Preset.Targets.Where(target => !target.Kind.IsSimulated).Select(target => target.Key)];

    /// <param name="conflicts">Tags of the minimal conflicts that are known.</param>
    public IReadOnlyList<RepairProposal> Of(IReadOnlyList<IReadOnlyList<string>> conflicts)
    {
        // whatever mends all by itself touches the first conflict
        var single = Alone(conflicts[0]).ToList();
        return single.Count > 0 ? single : Several([.. conflicts.SelectMany(conflict => conflict).Distinct(StringComparer.Ordinal)]);
    }

    private IEnumerable<RepairProposal> Alone(IReadOnlyList<string> tags)
    {
        var ways = problem.Model.Repairs(most: 1).Select(repair => Told(null, [], repair.Changes))
            .Concat(Departures(tags).Where(departure => IsMended(departure.Preset, [])).Select(departure => Told(departure, [], [])))
            .Concat(_targets.Where(target => IsMended(_situation.Preset, [target])).Select(target => Told(null, [target], [])));
        return ways.OfType<RepairProposal>();
    }

    private List<RepairProposal> Several(IReadOnlyList<string> tags)
    {
        var fewest = int.MaxValue;
        var repairs = new List<RepairProposal>();
        foreach (var departure in Departures(tags).Prepend(null))
        {
            foreach (var without in Subsets(_targets))
            {
                var count = (departure is null ? 0 : 1) + without.Count;
                var preset = departure?.Preset ?? _situation.Preset;
                if (count > 0 && count <= fewest && IsMended(preset, without))
                {
                    Add(Told(departure, without, []));
                }
                else if (count < fewest)
                {
                    var free = new DetailProblem(new Situation(preset, _situation.Catalogue), problem.Rules, ranked: true, asked: null, without);
                    foreach (var repair in free.Model.Repairs(most: fewest - count))
                    {
                        Add(Told(departure, without, repair.Changes));
                    }
                }
            }
        }

        return [.. repairs.Where(repair => repair.Set.Count == fewest).Take(Model.MostRepairs)];

        void Add(RepairProposal? repair)
        {
            if (repair is null)
            {
                return;
            }

            fewest = Math.Min(fewest, repair.Set.Count);
            repairs.Add(repair);
        }
    }

    private static IEnumerable<IReadOnlyList<string>> Subsets(List<string> of) =>
        Enumerable.Range(0, 1 << of.Count).Select(bits => (IReadOnlyList<string>)[.. of.Where((_, place) => ((bits >> place) & 1) == 1)]).OrderBy(subset => subset.Count);

    private bool IsMended(Preset preset, IReadOnlyList<string> without) =>
        new DetailProblem(new Situation(preset, _situation.Catalogue), problem.Rules, ranked: false, asked: null, without).Model.CanHold() is true;

    /// <summary>A repair in words, each target given up set to the best that the rest allows; null where a target cannot say so little.</summary>
    private RepairProposal? Told(Departure? departure, IReadOnlyList<string> without, IReadOnlyList<Change> changes)
    {
        List<ProposedValue> values = departure is null ? [] : [departure.Value];
        var preset = departure?.Preset ?? _situation.Preset;
        foreach (var change in changes)
        {
            var key = change.Tag["given:".Length..];
            var value = Setting.Numeric(preset.Set.First(given => given.Key == key).Value.Unit, change.Value);
            preset = preset with { Set = [.. preset.Set.Select(given => given.Key == key ? given with { Value = value, Text = value.ToString() } : given)] };
            values.Add(new ProposedValue(key, value.ToString()));
        }

        for (var i = 0; i < without.Count; i++)
        {
            if (Reached(preset, without[i], [.. without.Skip(i + 1)]) is not { } reached)
            {
                return null;
            }

            preset = With(preset, without[i], reached);
            values.Add(new ProposedValue("target." + without[i], Printing.Amount(reached, Kind.UValue)));
        }

        return new RepairProposal(values, SolvingWords.Change(values));
    }

    /// <summary>The least U-value in whole thousandths that holds with the rest, W/m²K; null where none that can be asked for does.</summary>
    /// <remarks>Halving the way between what fails and what holds asks only whether such a detail can be had, as an author would who tries one figure after another.</remarks>
    private decimal? Reached(Preset preset, string target, IReadOnlyList<string> without)
    {
        bool Holds(int thousandths) => IsMended(With(preset, target, thousandths / 1000m), without);
        var key = PresetShape.Targets.First(one => one.Key == target);
        var (fails, holds) = ((int)(key.Least * 1000) - 1, (int)(key.Most * 1000));
        if (!Holds(holds))
        {
            return null;
        }

        while (holds - fails > 1)
        {
            var between = (holds + fails) / 2;
            (fails, holds) = Holds(between) ? (fails, between) : (between, holds);
        }

        return holds / 1000m;
    }

    private static Preset With(Preset preset, string target, decimal value) =>
        preset with { Targets = [.. preset.Targets.Select(one => one.Key == target ? one with { Value = value } : one)] };

    /// <summary>Another word for a choice, or the usual material in place of the author's, where that can bear on these tags.</summary>
    private IEnumerable<Departure> Departures(IReadOnlyList<string> tags)
    {
        foreach (var choice in _situation.Choices.Where(choice => Concerns(choice.Parameter.Key, tags)))
        {
            foreach (var word in choice.Parameter.Options.Where(word => word != choice.Word))
            {
                var given = new Given(choice.Parameter.Key, new Setting(Unit.Choice, 0, word), word, choice.Parameter.At, FromBase: true);
                var preset = _situation.Preset with { Set = [.. _situation.Preset.Set.Where(other => other.Key != given.Key), given] };
                if (!PresetCheck.Faults(new Situation(preset, _situation.Catalogue), problem.Rules).Any())
                {
                    yield return new Departure(new ProposedValue(choice.Parameter.Key, word), preset);
                }
            }
        }

        foreach (var slot in _situation.Slots.Where(slot => slot.At is not null && Concerns(slot, tags)))
        {
            yield return new Departure(
                new ProposedValue("materials." + slot.Slot.Key, slot.Slot.Default),
                _situation.Preset with { Slots = [.. _situation.Preset.Slots.Select(other => ReferenceEquals(other, slot) ? slot with { Filling = slot.Usual, At = null } : other)] });
        }
    }

    private bool Concerns(FilledSlot slot, IReadOnlyList<string> tags) =>
        _situation.Sizes.Any(size => size.Slot == slot.Slot.Key && size.StockByMaterial.Count > 0 && tags.Contains("stock:" + size.Key, StringComparer.Ordinal))
        || Concerns(tags, part => part is Property property && (property.Slot == slot.Slot.Key || Followed(property.Slot) == slot.Slot.Key));

    private string? Followed(string slot) => _situation.Slots.FirstOrDefault(one => one.Slot.Key == slot)?.Slot.Follows;

    private bool Concerns(string choice, IReadOnlyList<string> tags) => Concerns(tags, part => part is Has || (part is Key key && key.Name == choice));

    // a change can only help where some expression of the conflict, or the existence of something in it, hangs on what is changed
    private bool Concerns(IReadOnlyList<string> tags, Func<Expression, bool> changes)
    {
        var said = problem.Rules.Where(rule => tags.Contains("rule:" + rule.Id, StringComparer.Ordinal)).SelectMany(rule => (Expression?[])[rule.When, rule.Require]).OfType<Expression>();
        var built = _situation.Preset.Components.SelectMany(component => component.Claims).Where(claim => tags.Contains("claim:" + claim.Id, StringComparer.Ordinal))
            .SelectMany(claim => (Written?[])[claim.When, claim.Require]).OfType<Written>().Select(_situation.Catalogue.Tree);
        return tags.Any(tag => tag.StartsWith("target:", StringComparison.Ordinal)) || said.Concat(built).Any(expression => Reaches(expression, changes));
    }

    private bool Reaches(Expression expression, Func<Expression, bool> changes) => expression.All().Any(part => changes(part) || part switch
    {
        Key { Kind: Kind.UValue or Kind.RValue } => true, // all layers and fixings, whatever they hang on
        Key key => Behind(key.Name).Any(written => Reaches(_situation.Catalogue.Tree(written), changes)),
        _ => false,
    });

    /// <summary>What decides whether there is such a size, and what it is.</summary>
    private IEnumerable<Written> Behind(string key) =>
        (_situation.DerivedOf(key)?.Cases ?? []).SelectMany(one => (Written?[])[one.When, one.As]).Append(_situation.Size(key)?.When).OfType<Written>();

    /// <summary>The preset with another choice or material.</summary>
    private sealed record Departure(ProposedValue Value, Preset Preset);
}
