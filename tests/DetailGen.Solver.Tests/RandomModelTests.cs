using CsCheck;
using DetailGen.Testing;

namespace DetailGen.Solver.Tests;

/// <summary>The solver against trying every assignment.</summary>
public class RandomModelTests
{
    private const int ModelsPerCase = 25;

    private static readonly Gen<int> Seed = Gen.Int[0, int.MaxValue - ModelsPerCase];

    [Fact]
    public void The_answer_is_the_first_in_rank_of_all_assignments() => OnModels(made =>
    {
        var expected = made.Best();
        switch (made.Model.Solve())
        {
            case Answer.Best best:
                Assert.NotNull(expected);
                Assert.Equal(made.Costs(expected), made.Costs(made.Read(best.Values)));
                Assert.Equal(expected, made.Read(best.Values));
                Assert.Equal(made.Costs(expected).Select(cost => cost[^1]), best.Costs.Select(cost => cost.Total));
                break;
            case Answer.Conflict:
                Assert.Null(expected);
                break;
            default:
                Assert.Fail("Nothing was proven.");
                break;
        }
    });

    [Fact]
    public void The_claims_can_hold_where_some_assignment_holds_them() => OnModels(made => Assert.Equal(made.Feasible().Any(), made.Model.CanHold()));

    [Fact]
    public void Without_any_one_member_the_others_of_a_conflict_can_hold() => OnModels(made =>
    {
        if (made.Model.Solve() is Answer.Conflict(var tags, var isMinimal))
        {
            Assert.True(isMinimal);
            Assert.Empty(made.Feasible(tags.Contains));
            foreach (var spared in tags)
            {
                Assert.NotEmpty(made.Feasible(tag => tag != spared && tags.Contains(tag)));
            }
        }
    });

    [Fact]
    public void Ranges_hold_exactly_the_values_that_some_assignment_has() => OnModels(made =>
    {
        var feasible = made.Feasible().ToArray();
        if (feasible.Length == 0)
        {
            return;
        }

        foreach (var range in made.Model.Ranges([.. made.Model.Variables])!)
        {
            var id = range.Variable.Id;
            var expected = feasible.Select(values => values[id]).Distinct().Order();
            Assert.Equal(expected, made.Domains[id].Where(value => range.Values.Any(piece => piece.Low <= value && value <= piece.High && (range.Variable.Domain.IsListed || (value - piece.Low) % range.Step == 0))));
            foreach (var (low, high) in range.Values)
            {
                Assert.Contains(low, made.Domains[id]);
                Assert.Contains(high, made.Domains[id]);
                Assert.True(low == high || !range.Variable.Domain.IsListed);
            }

            Assert.True(range.Values.Zip(range.Values.Skip(1), (a, b) => b.Low - a.High).All(gap => gap > range.Variable.Domain.Step || range.Variable.Domain.IsListed));
        }
    });

    [Fact]
    public void What_stops_a_range_forbids_the_next_value_and_nothing_in_it_can_be_spared() => OnModels(made =>
    {
        if (!made.Feasible().Any())
        {
            return;
        }

        foreach (var range in made.Model.Ranges([.. made.Model.Variables])!)
        {
            var id = range.Variable.Id;
            Check(range.Lowest, v => v[id] <= made.Domains[id].LastOrDefault(member => member < range.Values[0].Low), range.Values[0].Low > made.Domains[id][0]);
            Check(range.Highest, v => v[id] >= made.Domains[id].FirstOrDefault(member => member > range.Values[^1].High), range.Values[^1].High < made.Domains[id][^1]);
        }

        void Check(IReadOnlyList<string> stops, Func<long[], bool> beyond, bool stopped)
        {
            if (!stopped)
            {
                Assert.True(stops.Count == 0 || (stops.Count == 1 && stops[0].StartsWith("domain.", StringComparison.Ordinal))); // at its end the domain itself, where it has a tag
                return;
            }

            Assert.DoesNotContain(made.Feasible(stops.Contains), values => beyond(values));
            foreach (var spared in stops)
            {
                Assert.Contains(made.Feasible(tag => tag != spared && stops.Contains(tag)), values => beyond(values));
            }
        }
    });

    [Fact]
    public void Repairs_are_the_nearest_values_that_help_or_else_the_fewest_changes() => OnModels(made =>
    {
        var repairs = made.Model.Repairs();
        if (made.Feasible().Any())
        {
            Assert.Empty(repairs);
            return;
        }

        var expected = new List<(string, long)>();
        foreach (var (tag, at, value) in made.Givens)
        {
            var works = made.Feasible(other => other != tag).Select(values => values[at]).ToHashSet();
            expected.AddRange(works.Where(v => v < value).OrderDescending().Take(1).Select(v => (tag, v)));
            expected.AddRange(works.Where(v => v > value).Order().Take(1).Select(v => (tag, v)));
        }

        if (expected.Count > 0)
        {
            Assert.Equal(expected, repairs.Select(repair => (Assert.Single(repair.Changes).Tag, repair.Changes[0].Value)));
            return;
        }

        var free = made.Feasible(tag => !tag.StartsWith("given.", StringComparison.Ordinal)).ToArray();
        if (free.Length == 0)
        {
            Assert.Empty(repairs);
            return;
        }

        var sets = free.Select(values => made.Givens.Where(given => values[given.Variable] != given.Value).ToArray())
            .GroupBy(set => string.Join(' ', set.Select(given => given.Tag)), set => set, StringComparer.Ordinal).Select(group => group.First()).ToArray();
        var smallest = sets.Where(set => set.Length == sets.Min(other => other.Length)).ToArray();
        Assert.Equal(Math.Min(smallest.Length, Model.MostRepairs), repairs.Count);
        Assert.Equal(repairs.Count, repairs.Select(repair => string.Join(' ', repair.Changes.Select(change => change.Tag))).Distinct().Count());
        foreach (var repair in repairs)
        {
            var set = Assert.Single(smallest, set => set.Select(given => given.Tag).SequenceEqual(repair.Changes.Select(change => change.Tag)));
            var kept = free.Where(values => made.Givens.All(given => set.Contains(given) || values[given.Variable] == given.Value)).ToArray();
            Assert.Contains(kept, values => set.Select(given => values[given.Variable]).SequenceEqual(repair.Changes.Select(change => change.Value)));
            Assert.Equal(
                kept.Min(values => set.Sum(given => made.Model.Variables[given.Variable].Domain.Distance(values[given.Variable], given.Value))),
                repair.Changes.Sum(change => change.Variable.Domain.Distance(change.Value, set.First(given => given.Tag == change.Tag).Value)));
        }
    });

    [Fact]
    public void Conflicts_are_all_the_minimal_ones_smallest_first() => OnModels(made =>
    {
        const int most = 3;
        var tags = made.Hard.Select(claim => claim.Tag).OfType<string>().Distinct().Order(StringComparer.Ordinal).ToArray();
        var subsets = Enumerable.Range(0, 1 << tags.Length).OrderBy(bits => System.Numerics.BitOperations.PopCount((uint)bits));
        var minimal = new List<int>();
        if (!made.Feasible().Any())
        {
            var holding = made.Patterns(tags);
            minimal.AddRange(subsets.Where(bits => !holding.Any(held => (held & bits) == bits)).Aggregate(
                new List<int>(), (found, bits) => found.Exists(smaller => (smaller & bits) == smaller) ? found : [.. found, bits]));
        }

        var answer = made.Model.Conflicts(most);
        Assert.True(answer.IsComplete);
        Assert.Equal(minimal.Take(most).Select(bits => System.Numerics.BitOperations.PopCount((uint)bits)), answer.Sets.Select(set => set.Count));
        var all = minimal.Select(bits => string.Join(' ', tags.Where((_, i) => (bits >> i & 1) == 1))).ToHashSet();
        Assert.Subset(all, answer.Sets.Select(set => string.Join(' ', set)).ToHashSet());
        Assert.Equal(answer.Sets.Count, answer.Sets.Select(set => string.Join(' ', set)).Distinct().Count());
    });

    private static void OnModels(Action<RandomModel> check) => Seed.Always(
        seed =>
        {
            for (var i = 0; i < ModelsPerCase; i++)
            {
                try
                {
                    check(RandomModel.Of(seed + i));
                }
                catch (Exception fault)
                {
                    throw new InvalidOperationException($"Model {seed + i}: {fault.Message}", fault);
                }
            }
        });
}
