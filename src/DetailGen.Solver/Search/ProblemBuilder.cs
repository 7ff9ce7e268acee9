using DetailGen.Solver.Propagation;

namespace DetailGen.Solver.Search;

/// <summary>Turns claims into propagators over variables by number, those of the costs after those of the model.</summary>
internal sealed class ProblemBuilder
{
    private static readonly Int128 Largest = (Int128)1 << 61;
    private readonly List<Domain> _domains = [];
    private readonly List<Domain> _without = [];
    private readonly List<Propagator> _propagators = [];
    private readonly List<string> _tags = [];
    private readonly Dictionary<string, int> _tagIndex = new(StringComparer.Ordinal);
    private readonly List<int> _domainTags = [];
    private readonly List<Objective> _objectives = [];
    private readonly Model _model;
    private readonly SharedSums _shared = new();
    private readonly int _hardCount;

    private ProblemBuilder(Model model, bool sharing)
    {
        _model = model;
        foreach (var variable in model.Variables)
        {
            _domains.Add(variable.Domain);
            _without.Add(variable.Without);
            _domainTags.Add(variable.DomainTag is { } tag ? TagOf(tag) : -1);
        }

        foreach (var sum in sharing ? model.Shared : [])
        {
            PostShared(sum);
        }

        foreach (var (tag, claim) in model.Hard)
        {
            Post(claim, tag is null ? -1 : TagOf(tag));
        }

        _hardCount = _propagators.Count;
    }

    /// <summary>The hard claims alone: for conflicts and ranges, where refuting is all.</summary>
    public static Problem Hard(Model model) => new ProblemBuilder(model, sharing: true).Build();

    /// <summary>The hard claims just as they were made: for moves from one assignment to another.</summary>
    public static Problem WrittenOut(Model model) => new ProblemBuilder(model, sharing: false).Build();

    /// <summary>The hard claims as they were made, since with shared sums the best takes twice the steps, and the cost of every level.</summary>
    public static Problem Whole(Model model)
    {
        var builder = new ProblemBuilder(model, sharing: false);
        foreach (var level in model.Levels)
        {
            builder.Post(level);
        }

        return builder.Build();
    }

    private Problem Build() =>
        new([.. _domains], [.. _without], [.. _domainTags], [.. _propagators], [.. _tags], _model.Variables.Count, _hardCount, [.. _objectives]);

    private int TagOf(string tag)
    {
        if (!_tagIndex.TryGetValue(tag, out var index))
        {
            _tagIndex[tag] = index = _tags.Count;
            _tags.Add(tag);
        }

        return index;
    }

    private void Post(Claim claim, int tag)
    {
        switch (claim)
        {
            case Claim.AllOf(var parts):
                foreach (var part in parts)
                {
                    Post(part, tag);
                }

                break;
            case Claim.IsZero(var sum) when sum.Terms.Length > 0:
                var row = RowOf(sum);
                var steps = Array.ConvertAll(row.Variables, id => Arithmetic.Gcd(_domains[id].Step, _without[id].Step));
                _propagators.Add(new Equality(row.Variables, row.Factors, row.Bound) { Tag = tag });
                _propagators.Add(new Remainders(row, steps) { Tag = tag });
                if (Shorter(sum) is var shorter && shorter.Variables.Length < row.Variables.Length)
                {
                    _propagators.Add(new Equality(shorter.Variables, shorter.Factors, shorter.Bound) { Tag = tag }); // as well: whole steps show in the long one only
                }

                break;
            case Claim.Member(var variable, { Length: > 0 } values):
                _propagators.Add(new Membership(variable.Id, values) { Tag = tag });
                break;
            case Claim.Lookup { Rows.Length: > 0 } lookup:
                var (result, key) = (lookup.Result.Id, lookup.Key.Id);
                _propagators.Add(new TableLookup(result, key, Array.ConvertAll(lookup.Rows, r => r.Key), Array.ConvertAll(lookup.Rows, r => r.Result)) { Tag = tag });
                break;
            case Claim.Ratio ratio:
                PostQuotient(ratio, tag);
                break;
            default:
                var form = Normal.Form(claim);
                if (form.Count == 1)
                {
                    foreach (var part in form[0])
                    {
                        _propagators.Add(new AtMostRow(Shorter(part)) { Tag = tag });
                    }
                }
                else
                {
                    _propagators.Add(new Alternatives(Array.ConvertAll(form.ToArray(), rows => Array.ConvertAll(rows.ToArray(), Shorter))) { Tag = tag });
                }

                break;
        }
    }

    private void PostShared(Linear sum)
    {
        var row = RowOf(sum - sum.Constant);
        var reach = Reach(row.Variables, row.Factors);
        if (row.Variables.Length > 1 && reach <= Largest / 4)
        {
            var shorter = Shorter(sum - sum.Constant);
            var id = AddCost(Domain.OfCost(-(long)reach, (long)reach, 1));
            _propagators.Add(new Equality([.. shorter.Variables, id], [.. shorter.Factors, -1], 0));
            _shared.Add(row, id);
        }
    }

    private Row Shorter(Linear sum)
    {
        var row = RowOf(sum);
        var shorter = _shared.Shorter(row);
        return Reach(shorter.Variables, shorter.Factors) <= Largest / 2 ? shorter : row;
    }

    /// <exception cref="OverflowException">The sums could leave ±2^61.</exception>
    private void PostQuotient(Claim.Ratio ratio, int tag)
    {
        // The largest numbers that the propagator meets are those at the greatest divisor that there may ever be.
        var most = checked(Math.Max(_domains[ratio.Divisor.Id].High, _without[ratio.Divisor.Id].High) * ratio.Scale);
        _ = RowOf(ratio.Numerator - (most * ratio.Result) - most);
        _propagators.Add(new Quotient(ratio.Result.Id, RowOf(ratio.Numerator), ratio.Divisor.Id, ratio.Scale) { Tag = tag });
    }

    private void Post(Level level)
    {
        switch (level)
        {
            case Level.Wanted wanted:
                PostWanted(wanted);
                break;
            case Level.Wished wished:
                PostWished(wished);
                break;
            case Level.Least least:
                _objectives.Add(new Objective(RowOf(least.Sum), null, []));
                break;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    private void PostWanted(Level.Wanted level)
    {
        var wanted = new List<WantedClaim>();
        foreach (var soft in level.Claims)
        {
            var one = soft.Claim is Claim.Member(var variable, { Length: > 0 } values)
                ? new WantedClaim(soft, [], variable, values, Nearness.Farthest(variable.Domain.Low, variable.Domain.High, values))
                : WantedClaim.Of(soft);
            if (one.Most > 0)
            {
                wanted.Add(one); // others cannot be broken
            }
        }

        PostMissing(wanted, PostBroken(wanted));
    }

    /// <returns>The sum that counts the broken ones.</returns>
    private Row PostBroken(List<WantedClaim> wanted)
    {
        var ranges = new List<Range>();
        var counts = new List<(int, long)>();
        foreach (var one in wanted)
        {
            var start = _propagators.Count;
            var broken = AddCost(Domain.Range(0, 1));
            counts.Add((broken, 1));
            if (one.Variable is { } variable)
            {
                _propagators.Add(new Nearness(variable.Id, one.Values, broken, counted: true));
            }
            else if (one.Form.Count == 1)
            {
                foreach (var row in one.Form[0])
                {
                    _propagators.Add(new AtMostRow(RowOf(row, (broken, -(long)Int128.Max(1, Most(row))))));
                }
            }
            else
            {
                var kept = one.Form.ConvertAll(rows => Array.ConvertAll(rows.ToArray(), RowOf));
                kept.Add([new Row([broken], [-1], -1)]);
                _propagators.Add(new Alternatives([.. kept]));
            }

            ranges.Add(start.._propagators.Count);
        }

        var sum = RowOf(0, [.. counts]);
        _objectives.Add(new Objective(sum, null, [.. ranges]));
        return sum;
    }

    private void PostMissing(List<WantedClaim> wanted, Row counted)
    {
        var ranges = new List<Range>();
        var shortfalls = new List<(int, long)>();
        foreach (var one in wanted)
        {
            var start = _propagators.Count;
            var missing = AddCost(Domain.Range(0, one.Most));
            shortfalls.Add((missing, one.Soft.Weight));
            if (one.Variable is { } variable)
            {
                _propagators.Add(new Nearness(variable.Id, one.Values, missing, counted: false));
            }
            else if (one.Form.Count == 1)
            {
                foreach (var row in one.Form[0])
                {
                    _propagators.Add(new AtMostRow(RowOf(row, (missing, -1))));
                }
            }
            else
            {
                _propagators.Add(new Shortfall([.. one.Form.ConvertAll(rows => Array.ConvertAll(rows.ToArray(), row => RowOf(row, (missing, -1))))], missing));
            }

            ranges.Add(start.._propagators.Count);
        }

        _objectives.Add(new Objective(RowOf(0, [.. shortfalls]), null, [.. ranges], counted));
    }

    private void PostWished(Level.Wished level)
    {
        var ranges = new List<Range>();
        var distances = new List<(int, long)>();
        var places = new List<(int, long)>();
        foreach (var (variable, value) in level.Wishes)
        {
            var domain = variable.Domain;
            if (domain.Count == 1)
            {
                continue;
            }

            var start = _propagators.Count;
            var place = domain.NearestPlace(value);
            var far = AddCost(Domain.Range(0, Math.Max(place, domain.Count - 1 - place)));
            distances.Add((far, 1));
            places.Add((variable.Id, place));
            if (domain.IsListed)
            {
                var keys = new long[domain.Count];
                var results = new long[domain.Count];
                for (var i = 0; i < keys.Length; i++)
                {
                    keys[i] = domain.At(i);
                    results[i] = Math.Abs(i - place);
                }

                _propagators.Add(new TableLookup(far, variable.Id, keys, results));
            }
            else
            {
                var wish = domain.At(place);
                _propagators.Add(new AtMostRow(RowOf(variable - wish, (far, -domain.Step))));
                _propagators.Add(new AtMostRow(RowOf(wish - variable, (far, -domain.Step))));
            }

            ranges.Add(start.._propagators.Count);
        }

        _objectives.Add(new Objective(RowOf(0, [.. distances]), [.. places], [.. ranges]));
    }

    private int AddCost(Domain domain)
    {
        _domains.Add(domain);
        _without.Add(domain);
        _domainTags.Add(-1);
        return _domains.Count - 1;
    }

    private Row RowOf(Linear sum) => RowOf(sum, []);

    /// <exception cref="OverflowException">The sum could leave ±2^61.</exception>
    private Row RowOf(Linear sum, params ReadOnlySpan<(int Id, long Factor)> costs)
    {
        var variables = new int[sum.Terms.Length + costs.Length];
        var factors = new long[variables.Length];
        for (var i = 0; i < sum.Terms.Length; i++)
        {
            _model.MustOwn(sum.Terms[i].Variable);
            (variables[i], factors[i]) = (sum.Terms[i].Variable.Id, sum.Terms[i].Factor);
        }

        for (var i = 0; i < costs.Length; i++)
        {
            (variables[sum.Terms.Length + i], factors[sum.Terms.Length + i]) = costs[i];
        }

        return Int128.Abs(sum.Constant) + Reach(variables, factors) <= Largest
            ? new Row(variables, factors, -sum.Constant)
            : throw new OverflowException($"A sum of {variables.Length} terms could leave the range of whole numbers that the solver holds (2^61).");
    }

    /// <summary>As far from 0 as a sum can be, whatever domains are given up.</summary>
    private Int128 Reach(int[] variables, long[] factors)
    {
        var rough = 0.0;
        var small = 0L;
        for (var i = 0; i < variables.Length; i++)
        {
            rough += Math.Abs((double)factors[i]) * Reach(variables[i]);
            small = unchecked(small + (Math.Abs(factors[i]) * Reach(variables[i])));
        }

        if (rough < long.MaxValue / 2)
        {
            return small; // as mostly; wide numbers are slow
        }

        Int128 reach = 0;
        for (var i = 0; i < variables.Length; i++)
        {
            reach += Int128.Abs(factors[i]) * Reach(variables[i]);
        }

        return reach;
    }

    /// <summary>The most a sum can be over the whole domains.</summary>
    private static Int128 Most(Linear sum)
    {
        var rough = Math.Abs((double)sum.Constant);
        var small = sum.Constant;
        foreach (var (variable, factor) in sum.Terms)
        {
            var bound = factor > 0 ? variable.Domain.High : variable.Domain.Low;
            rough += Math.Abs((double)factor * bound);
            small = unchecked(small + (factor * bound));
        }

        if (rough < long.MaxValue / 2)
        {
            return small;
        }

        Int128 most = sum.Constant;
        foreach (var (variable, factor) in sum.Terms)
        {
            most += (Int128)factor * (factor > 0 ? variable.Domain.High : variable.Domain.Low);
        }

        return most;
    }

    private long Reach(int id) => Math.Max(
        Math.Max(Math.Abs(_domains[id].Low), Math.Abs(_domains[id].High)),
        Math.Max(Math.Abs(_without[id].Low), Math.Abs(_without[id].High)));

    /// <param name="Form">As <see cref="Normal"/> tells it; empty for a membership.</param>
    /// <param name="Variable">Of a membership.</param>
    /// <param name="Most">What can be missing of it.</param>
    private sealed record WantedClaim(SoftClaim Soft, List<List<Linear>> Form, Variable? Variable, long[] Values, long Most)
    {
        public static WantedClaim Of(SoftClaim soft)
        {
            var form = Normal.Form(soft.Claim);
            Int128 most = 0;
            form.ForEach(rows => rows.ForEach(row => most = Int128.Max(most, ProblemBuilder.Most(row))));
            return new(soft, form, null, [], (long)most);
        }
    }
}
