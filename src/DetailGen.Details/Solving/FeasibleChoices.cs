using DetailGen.Details.Rules;
using DetailGen.Solver;

namespace DetailGen.Details.Solving;

/// <summary>The words that a choice can have while the rest stands.</summary>
/// <param name="Excluded">Other words, each with the members of a minimal conflict, or with what the preset gives that would then not be there.</param>
/// <param name="Proven">False where the search was cut short for some word: it is then in neither list.</param>
public sealed record ChoiceRange(string Key, IReadOnlyList<string> Words, IReadOnlyList<(string Word, IReadOnlyList<Member> Stops)> Excluded, bool Proven);

/// <summary>Asks the solver which words of a choice can be had.</summary>
internal static class FeasibleChoices
{
    public static ChoiceRange Of(Situation situation, Chosen choice, IReadOnlyList<Rule> rules)
    {
        var words = new List<string>();
        var excluded = new List<(string, IReadOnlyList<Member>)>();
        foreach (var word in choice.Parameter.Options)
        {
            var stops = Against(situation, choice.Parameter.Key, word, rules);
            if (stops is { Count: 0 })
            {
                words.Add(word);
            }
            else if (stops is not null)
            {
                excluded.Add((word, stops));
            }
        }

        return new ChoiceRange(choice.Parameter.Key, words, excluded, words.Count + excluded.Count == choice.Parameter.Options.Count);
    }

    /// <summary>What stands against this word; nothing where the detail can be solved with it, null where that could not be proven either way.</summary>
    private static IReadOnlyList<Member>? Against(Situation situation, string key, string word, IReadOnlyList<Rule> rules)
    {
        var other = new Situation(situation.Preset, situation.Catalogue, (key, word));
        List<Member> gone = [.. PresetCheck.Faults(other, rules).Select(fault => fault.Key).OfType<string>().Distinct(StringComparer.Ordinal)
            .Select(missing => new Member(MemberKind.Given, "given." + missing, SolvingWords.GoneMember(missing)))];
        if (gone.Count > 0)
        {
            return gone;
        }

        var problem = new DetailProblem(other, rules, ranked: false);
        return problem.Model.CanHold() switch
        {
            true => [],
            false when problem.Model.Solve() is Answer.Conflict conflict => new Members(problem).Of(conflict.Tags),
            _ => null,
        };
    }
}
