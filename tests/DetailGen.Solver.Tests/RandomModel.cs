namespace DetailGen.Solver.Tests;

/// <summary>A small model in the solver's own shape, and beside each claim what it means, written without the solver.</summary>
internal sealed class RandomModel
{
    private readonly Random _random;
    private readonly Random _sharing;
    private readonly List<long[]> _domains = [];
    private readonly List<long[]> _spaces = [];
    private readonly List<(string? Tag, Func<long[], long> Shortfall)> _hard = [];
    private readonly List<Func<long[], long[]>> _costs = [];
    private readonly List<Func<long[], string?>> _names = [];

    private RandomModel(int seed) => (_random, _sharing) = (new Random(seed), new Random(seed));

    public Model Model { get; } = new();

    public List<(string Tag, int Variable, long Value)> Givens { get; } = [];

    public IReadOnlyList<long[]> Domains => _domains;

    public IReadOnlyList<(string? Tag, Func<long[], long> Shortfall)> Hard => _hard;

    public static RandomModel Of(int seed, int variables = 5, int most = 6, bool givens = true, bool wishes = true)
    {
        var made = new RandomModel(seed);
        made.AddVariables(made._random.Next(1, variables + 1), most);
        // Most claims are drawn so that one hidden assignment holds them: else nearly every model would contradict itself in a single claim.
        var hidden = made._domains.ConvertAll(made.Pick).ToArray();
        for (var i = made._random.Next(1, 8); i > 0; i--)
        {
            var (claim, shortfall) = made.AnyClaim(2, true);
            for (var tries = 0; tries < 20 && shortfall(hidden) > 0 && made._random.Next(20) > 0; tries++)
            {
                (claim, shortfall) = made.AnyClaim(2, true);
            }

            var tag = made._random.Next(8) == 0 ? null : $"rule.{made._random.Next(12)}";
            made.Model.Require(tag, claim);
            made._hard.Add((tag, shortfall));
        }

        for (var i = givens ? made._random.Next(0, 3) : 0; i > 0; i--)
        {
            var at = made._random.Next(made._domains.Count);
            var value = made._random.Next(12) == 0 ? made._domains[at][0] + 1 : made._random.Next(3) > 0 ? hidden[at] : made.Pick(made._domains[at]);
            if (!made.Givens.Exists(given => given.Variable == at))
            {
                made.Givens.Add(($"given.{at}", at, value));
                made.Model.Give($"given.{at}", made.Model.Variables[at], value);
                made._hard.Add(($"given.{at}", v => Math.Abs(v[at] - value)));
            }
        }

        for (var i = wishes ? made._random.Next(0, 4) : 0; i > 0; i--)
        {
            made.AddLevel(i);
        }

        return made;
    }

    /// <summary>All assignments that hold the hard claims under these tags (and the untagged ones).</summary>
    public IEnumerable<long[]> Feasible(Func<string, bool>? inForce = null)
    {
        var claims = _hard.Where(claim => claim.Tag is null || inForce is null || inForce(claim.Tag)).Select(claim => claim.Shortfall).ToArray();
        return All().Where(values => Array.TrueForAll(claims, shortfall => shortfall(values) == 0));
    }

    /// <summary>For every assignment that holds the untagged claims, which of these tags hold in it, as bits; each pattern once.</summary>
    public IReadOnlyCollection<int> Patterns(string[] tags)
    {
        var claims = tags.Select(tag => _hard.Where(claim => claim.Tag == tag).Select(claim => claim.Shortfall).ToArray()).ToArray();
        return Feasible(_ => false).Select(values => claims.Select((of, i) => Array.TrueForAll(of, shortfall => shortfall(values) == 0) ? 1 << i : 0).Sum()).ToHashSet();
    }

    /// <summary>The best assignment by trying all; null where there is none.</summary>
    public long[]? Best()
    {
        // Ties go by name in ordinal order; the names are given so that this is the order of adding turned round.
        var order = Enumerable.Range(0, _domains.Count).OrderBy(i => Model.Variables[i].Name, StringComparer.Ordinal).ToArray();
        return Feasible().MinBy(values => _costs.SelectMany(cost => cost(values)).Concat(order.Select(i => values[i])).ToArray(), Comparer<long[]>.Create(Compare));
    }

    public long[][] Costs(long[] values) => [.. _costs.Select(cost => cost(values))];

    public long[] Read(Values values) => [.. Model.Variables.Select(variable => values[variable])];

    private static int Compare(long[]? a, long[]? b) => a.AsSpan().SequenceCompareTo(b);

    private IEnumerable<long[]> All()
    {
        var places = new int[_domains.Count];
        while (true)
        {
            yield return [.. places.Select((place, i) => _spaces[i][place])];
            var at = 0;
            while (at < places.Length && ++places[at] == _spaces[at].Length)
            {
                places[at++] = 0;
            }

            if (at == places.Length)
            {
                yield break;
            }
        }
    }

    private void AddVariables(int count, int most)
    {
        for (var i = 0; i < count; i++)
        {
            var size = _random.Next(1, most + 1);
            var step = Pick([1, 1, 2, 3, 5]);
            long low = _random.Next(-6, 7);
            // A tagged domain is a claim that can be given up; the variable then roams a wider space.
            var tag = i == 0 && _random.Next(2) == 0 ? $"domain.{i}" : null;
            var values = _random.Next(2) == 0
                ? [.. Enumerable.Range(0, size).Select(k => low + k * step)]
                : Enumerable.Range(0, size).Select(_ => (long)_random.Next(-8, 15)).Distinct().Order().ToArray();
            var regular = values.Length < 2 || values.Zip(values.Skip(1), (a, b) => b - a).Distinct().Count() == 1;
            var stride = values.Length < 2 ? step : values[1] - values[0];
            var domain = regular && _random.Next(2) == 0
                ? Domain.Range(values[0], values[^1] + _random.Next((int)stride), stride)
                : Domain.Of(values);
            var wider = Domain.Range(values[0] - 2, values[^1] + 2);
            Model.Add($"v{count - i}", domain, tag, wider);
            _domains.Add(values);
            _spaces.Add(tag is null ? values : [.. Enumerable.Range(0, (int)wider.Count).Select(k => wider.At(k))]);
            if (tag is not null)
            {
                var at = i;
                _hard.Add((tag, v => values.Min(member => Math.Abs(member - v[at]))));
            }
        }
    }

    private (Linear Sum, Func<long[], long> Value) AnySum()
    {
        Linear sum = _random.Next(-12, 13);
        var constant = sum.Constant;
        var factors = new long[_domains.Count];
        for (var i = _random.Next(1, 4); i > 0; i--)
        {
            var at = _random.Next(_domains.Count);
            var factor = Pick([1, 1, 1, -1, -1, 2, -2, 3]);
            factors[at] += factor;
            sum += factor * Model.Variables[at];
        }

        Share(factors);
        return (sum, values => constant + factors.Zip(values, (factor, value) => factor * value).Sum());
    }

    /// <summary>Every other sum shares some of its terms with whatever else holds them.</summary>
    private void Share(long[] factors)
    {
        if (_sharing.Next(2) == 0)
        {
            Linear sum = _sharing.Next(3);
            for (var at = 0; at < factors.Length; at++)
            {
                sum += (_sharing.Next(4) > 0 ? factors[at] : 0) * Model.Variables[at];
            }

            Model.Share(sum);
        }
    }

    private (Claim Claim, Func<long[], long> Shortfall) AnyClaim(int depth, bool table)
    {
        var kind = _random.Next(depth > 0 ? 10 : 5);
        if (kind <= 1)
        {
            var (sum, value) = AnySum();
            return (sum <= 0, v => Math.Max(0, value(v)));
        }

        if (kind <= 3)
        {
            var (sum, value) = AnySum();
            return (sum.EqualTo(0), v => Math.Abs(value(v)));
        }

        var at = _random.Next(_domains.Count);
        if (kind == 4)
        {
            var among = Enumerable.Range(0, _random.Next(1, 4)).Select(_ => Pick(_domains[at]) + _random.Next(2)).ToArray();
            return (Model.Variables[at].In(among), v => among.Min(member => Math.Abs(member - v[at])));
        }

        if (kind == 5 && table && _domains[at][0] >= 1)
        {
            var (sum, value) = AnySum();
            var result = _random.Next(_domains.Count);
            long scale = _random.Next(1, 3);
            return (Claim.Quotient(Model.Variables[result], sum, Model.Variables[at], scale), v => _spaces[at].Where(n => n >= 1).Min(n => Math.Max(
                Math.Abs(n - v[at]), Math.Max(value(v) - (n * scale * v[result]), (n * scale * (v[result] - 1)) + 1 - value(v)))));
        }

        if (kind == 5 && table)
        {
            var other = _random.Next(_domains.Count);
            var rows = _domains[at].Where(_ => _random.Next(4) > 0).Select(key => (Key: key, Result: Pick(_domains[other]))).ToArray();
            return (Claim.Table(Model.Variables[other], Model.Variables[at], rows),
                v => rows.Length == 0 ? 1 : rows.Min(row => Math.Max(Math.Abs(row.Key - v[at]), Math.Abs(row.Result - v[other]))));
        }

        if (kind == 6)
        {
            var limit = Pick(_domains[at]);
            var then = AnyClaim(depth - 1, table);
            return _random.Next(2) == 0
                ? (Claim.When(Model.Variables[at] >= limit, then.Claim), v => Math.Min(Math.Max(0, v[at] - (limit - 1)), then.Shortfall(v)))
                : (Claim.When(Model.Variables[at].Is(limit), then.Claim), v => v[at] != limit ? 0 : Math.Min(1, then.Shortfall(v)));
        }

        var parts = Enumerable.Range(0, _random.Next(1, 4)).Select(_ => AnyClaim(depth - 1, table)).ToArray();
        return _random.Next(3) > 0
            ? (Claim.Any([.. parts.Select(part => part.Claim)]), v => parts.Min(part => part.Shortfall(v)))
            : (Claim.All([.. parts.Select(part => part.Claim)]), v => parts.Max(part => part.Shortfall(v)));
    }

    private void AddLevel(int number)
    {
        switch (_random.Next(3))
        {
            case 0:
                var claims = Enumerable.Range(0, _random.Next(1, 5)).Select(_ => (AnyClaim(1, true), Weight: (long)_random.Next(1, 3))).ToArray();
                Model.Then(new Level.Wanted($"wanted {number}", [.. claims.Select((claim, i) => new SoftClaim($"soft.{number}.{i}", claim.Item1.Claim, claim.Weight))]));
                _costs.Add(v => [claims.Count(claim => claim.Item1.Shortfall(v) > 0), claims.Sum(claim => claim.Weight * claim.Item1.Shortfall(v))]);
                break;
            case 1:
                var wishes = Enumerable.Range(0, _domains.Count).Where(_ => _random.Next(3) > 0).Select(at => (At: at, Value: Pick(_domains[at]) + _random.Next(3) - 1)).ToArray();
                Model.Then(new Level.Wished($"wished {number}", [.. wishes.Select(wish => new Wish(Model.Variables[wish.At], wish.Value))]));
                _costs.Add(v => [wishes.Sum(wish => Math.Abs(Array.IndexOf(_domains[wish.At], v[wish.At]) - Place(_domains[wish.At], wish.Value)))]);
                break;
            default:
                var (sum, value) = AnySum();
                Model.Then(new Level.Least($"least {number}", sum));
                _costs.Add(v => [value(v)]);
                break;
        }
    }

    private static long Place(long[] domain, long wish) => Array.IndexOf(domain, domain.MinBy(member => (Math.Abs(member - wish), member)));

    private long Pick(long[] from) => from[_random.Next(from.Length)];
}
