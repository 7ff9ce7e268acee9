using DetailGen.Details.Presets;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules;

namespace DetailGen.Details.Solving;

/// <summary>Faults of a preset that show only when its choices are settled and its rules are known.</summary>
internal static class PresetCheck
{
    public static IEnumerable<Diagnostic> Faults(Situation situation, IReadOnlyList<Rule> rules)
    {
        var (preset, catalogue) = (situation.Preset, situation.Catalogue);
        foreach (var given in preset.Set.Concat(preset.Prefer).Where(given => !given.FromBase && !IsHere(situation, given)))
        {
            if (preset.Components.SelectMany(component => component.Parameters).FirstOrDefault(one => one.Key == given.Key) is { } parameter)
            {
                yield return RuleMessages.KeyNeeds(given.At, given.Key, parameter.When?.Text);
            }
        }

        foreach (var swapped in preset.Slots.Where(slot => slot is { At: { }, FromBase: false }).GroupBy(slot => slot.Slot.Key, StringComparer.Ordinal).Select(same => same.First()))
        {
            var filled = situation.Slots.FirstOrDefault(slot => slot.Slot.Key == swapped.Slot.Key);
            if (filled is null)
            {
                yield return RuleMessages.KeyNeeds(swapped.At!.Value, swapped.Slot.Key, swapped.Slot.When?.Text);
            }
            else if (filled.At is null)
            {
                // of several under conditions, the one that the choices leave takes another kind
                yield return RuleMessages.MaterialNeeds(swapped.At!.Value, filled.Slot, swapped);
            }
        }

        foreach (var named in preset.Rules.Where(named => catalogue.Packs.All(pack => pack.Name != named.Name)))
        {
            var names = catalogue.Packs.Select(pack => pack.Name).ToList();
            yield return RuleMessages.UnknownPack(named.At, named.Name, names, Nearest.To(named.Name, names));
        }

        foreach (var waiver in preset.Waivers.Where(waiver => !rules.Any(rule => rule.Names(waiver.Rule))))
        {
            yield return RuleMessages.UnknownRule(waiver.At, waiver.Rule, Nearest.To(waiver.Rule, rules.SelectMany(rule => rule.Aliases.Prepend(rule.Id))));
        }

        foreach (var twice in preset.Waivers.Count > 1 ? WaivedTwice(preset, rules) : [])
        {
            yield return twice;
        }
    }

    // under its id and under another of its names: only one of the two reasons could be told
    private static IEnumerable<Diagnostic> WaivedTwice(Preset preset, IReadOnlyList<Rule> rules) =>
        from rule in rules
        let own = preset.Waivers.Where(waiver => rule.Names(waiver.Rule)).ToList()
        from again in own.Skip(1)
        select RuleMessages.WaivedTwice(again.At, rule.Id, own[0].Rule, own[0].At);

    private static bool IsHere(Situation situation, Given given) =>
        situation.Size(given.Key) is not null || situation.Choices.Any(choice => choice.Parameter.Key == given.Key);
}
