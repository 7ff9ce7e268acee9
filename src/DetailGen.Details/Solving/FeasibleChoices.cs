using DetailGen.Details.Rules;
using DetailGen.Solver;

namespace DetailGen.Details.Solving;

/// <summary>The words that a choice can have while the rest stands.</summary>
/// <param name="Excluded">The other words, each with the members of a minimal conflict, or with what the preset sets that would then not be there.</param>
public sealed record ChoiceRange(string Key, IReadOnlyList<string> Words, IReadOnlyList<(string Word, IReadOnlyList<string> Stops)> Excluded);

internal static class FeasibleChoices
{
    public static ChoiceRange Of(Situation situation, Chosen choice, IReadOnlyList<Rule> rules)
    {
        var words = new List<string>();
        var excluded = new List<(string, IReadOnlyList<string>)>();
        foreach (var word in choice.Parameter.Options)
        {
            var stops = Against(situation, choice.Parameter.Key, word, rules);
            if (stops.Count == 0)
            {
                words.Add(word);
            }
            else
            {
                excluded.Add((word, stops));
            }
        }

        return new ChoiceRange(choice.Parameter.Key, words, excluded);
    }

    /// <summary>What stands against this word; nothing where the detail can be solved with it.</summary>
    private static IReadOnlyList<string> Against(Situation situation, string key, string word, IReadOnlyList<Rule> rules)
    {
        var other = new Situation(situation.Preset, situation.Catalogue, (key, word));
        List<string> gone = [.. PresetCheck.Faults(other, rules).Select(fault => fault.Key is { } named ? "given." + named : fault.Code).Distinct(StringComparer.Ordinal)];
        if (gone.Count > 0)
        {
            return gone;
        }

        var problem = new DetailProblem(other, rules, ranked: false);
        return problem.Model.Solve() switch
        {
            Answer.Best => [],
            Answer.Conflict conflict => [.. new Members(problem).Of(conflict.Tags).Select(member => member.Id)],
            _ => ["not-proven"],
        };
    }
}
