using DetailGen.Details.Reading;
using DetailGen.Details.Rules.Language;

namespace DetailGen.Details.Rules;

/// <summary>How packs lie over one another: a pack that extends another holds its rules too, and its own rule of an id takes the place of the other's.</summary>
internal static class PackOrder
{
    /// <summary>The packs of these names with all that they extend, each once, what is extended first. Unknown names are passed over.</summary>
    public static IReadOnlyList<RulePack> Named(IEnumerable<string> names, IReadOnlyList<RulePack> packs)
    {
        var all = new List<RulePack>();
        foreach (var name in names)
        {
            foreach (var pack in Enumerable.Reverse(Chain(name, packs)).Where(pack => !all.Contains(pack)))
            {
                all.Add(pack);
            }
        }

        return all;
    }

    /// <summary>The rules of packs in that order; of several of one id the last stands.</summary>
    public static IReadOnlyList<Rule> Rules(IReadOnlyList<RulePack> packs)
    {
        var all = new List<Rule>();
        foreach (var rule in packs.SelectMany(pack => pack.Rules))
        {
            var place = all.FindIndex(other => other.Names(rule.Id));
            if (place < 0)
            {
                all.Add(rule);
            }
            else
            {
                all[place] = rule with { Name = rule.Name ?? all[place].Name, Aliases = [.. all[place].Aliases.Union(rule.Aliases, StringComparer.Ordinal).Where(alias => alias != rule.Id)] };
            }
        }

        return all;
    }

    /// <summary>Faults that show only when all packs are read.</summary>
    public static IEnumerable<Diagnostic> Faults(IReadOnlyList<RulePack> packs)
    {
        foreach (var pack in packs.Where(pack => pack.Head?.Extends is not null))
        {
            var extends = pack.Head!.Extends!;
            if (packs.All(other => other.Name != extends.Text))
            {
                var names = packs.Select(other => other.Name).ToList();
                yield return RuleMessages.UnknownPack(extends.At, extends.Text, names, Nearest.To(extends.Text, names));
            }
            else if (Chain(pack.Name, packs)[^1].Head?.Extends is not null)
            {
                yield return RuleMessages.PackRing(extends.At, pack.Name);
            }
        }

        foreach (var pack in packs)
        {
            var known = Chain(pack.Name, packs).SelectMany(other => other.Rules).ToList();
            foreach (var named in (pack.Head?.Foremost ?? []).Where(named => !known.Exists(rule => rule.Names(named.Text))))
            {
                yield return RuleMessages.UnknownRule(named.At, named.Text, Nearest.To(named.Text, known.Select(rule => rule.Id)));
            }

            var below = Chain(pack.Name, packs).Skip(1).ToList();
            foreach (var rule in pack.Rules)
            {
                if (below.SelectMany(other => other.Rules).FirstOrDefault(other => other.Names(rule.Id)) is { } before)
                {
                    if (rule.Relaxes is null && !AsksNoLess(rule, before))
                    {
                        yield return RuleMessages.RelaxesWithoutReason(rule.At, rule.Id, before.At);
                    }
                }
                else if (rule.Relaxes is not null)
                {
                    yield return RuleMessages.RelaxesNothing(rule.At, rule.Id, Nearest.To(rule.Id, below.SelectMany(other => other.Rules).Select(other => other.Id)));
                }
                else if (packs.TakeWhile(other => other != pack).Where(other => !Chain(other.Name, packs).Contains(pack)).SelectMany(other => other.Rules).FirstOrDefault(other => other.Names(rule.Id)) is { } elsewhere)
                {
                    yield return RuleMessages.TwiceNamed(rule.At, rule.Id, elsewhere.At);
                }
            }
        }
    }

    /// <summary>Plainly no less: as severe, at least as binding, under the same condition, the same comparison with a figure no looser.</summary>
    internal static bool AsksNoLess(Rule rule, Rule before) =>
        rule.Class == before.Class && rule.Severity <= before.Severity && (rule.Blocks || !before.Blocks)
            && (rule.When is null || rule.When.ToString() == before.When?.ToString())
            && (rule.Require?.ToString() == before.Require?.ToString()
                || (rule.Require is Comparison { Left: Key left, Right: Figure now } mine && before.Require is Comparison { Left: Key other, Right: Figure was } theirs
                    && left.Name == other.Name && mine.Relation == theirs.Relation && now.Kind == was.Kind && NoLooser(mine.Relation, now, was)));

    // of two slopes the steeper is the greater, and it has the smaller n
    private static bool NoLooser(Relation relation, Figure now, Figure was)
    {
        var order = now.Kind == Kind.Slope ? was.Value.CompareTo(now.Value) : now.Value.CompareTo(was.Value);
        return relation switch
        {
            Relation.AtLeast or Relation.More => order >= 0,
            Relation.AtMost or Relation.Less => order <= 0,
            _ => order == 0,
        };
    }

    // the pack, what it extends, what that extends; ends where a name is missing or comes again
    private static List<RulePack> Chain(string name, IReadOnlyList<RulePack> packs)
    {
        var chain = new List<RulePack>();
        for (var next = Find(name); next is not null && !chain.Contains(next); next = next.Head?.Extends is { } extends ? Find(extends.Text) : null)
        {
            chain.Add(next);
        }

        return chain;

        RulePack? Find(string wanted) => packs.FirstOrDefault(pack => pack.Name == wanted);
    }
}
