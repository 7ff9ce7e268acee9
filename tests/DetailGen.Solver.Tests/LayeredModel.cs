namespace DetailGen.Solver.Tests;

/// <summary>
/// A model as large as a real one and of its shape: stacks of listed and stepped sizes in micrometres, sums of them, products split into cases,
/// resistances by table, minima, overlaps, wishes for nearly all sizes and some values given.
/// </summary>
internal static class LayeredModel
{
    /// <param name="chained">Each block's height is tied to that of the one before.</param>
    public static Model Of(int seed, int blocks = 4, int givens = 6, bool wishes = true, bool chained = true)
    {
        var random = new Random(seed);
        var model = new Model();
        var defaults = new List<Wish>();
        var preferred = new List<Wish>();
        var stock = new List<SoftClaim>();
        var should = new List<SoftClaim>();
        var total = (Linear)0;
        Variable? before = null;
        for (var b = 0; b < blocks; b++)
        {
            var leaf = Size($"b{b}.leaf", Domain.Of(90_000, 100_000, 102_500, 140_000, 215_000), 102_500);
            var gap = Size($"b{b}.gap", Domain.Range(50_000, 300_000, 5_000), 100_000 + 25_000 * random.Next(4));
            var fill = Size($"b{b}.fill", Domain.Of(50_000, 75_000, 90_000, 100_000, 125_000, 150_000), 100_000);
            var inner = Size($"b{b}.inner", Domain.Of(100_000, 140_000, 190_000), 100_000);
            var lining = Size($"b{b}.lining", Domain.Of(12_500, 15_000, 25_000, 37_500, 50_000), 12_500);
            var dab = Size($"b{b}.dab", Domain.Range(5_000, 25_000, 1_000), 15_000);
            var width = model.Add($"b{b}.width", Domain.Range(0, 2_000_000, 500));
            Rule($"eq.{b}.width", width.EqualTo(leaf + gap + inner + lining + dab));
            Rule($"rule.{b}.gap", gap >= fill);
            Rule($"rule.{b}.clear", Claim.When(fill >= 100_000, gap - fill >= 25_000));

            var board = Size($"b{b}.board", Domain.Range(20_000, 400_000, 5_000), 120_000);
            var layers = Size($"b{b}.layers", Domain.Range(1, 3), 2);
            for (var n = 1; n <= 3; n++)
            {
                var least = n;
                Rule($"rule.{b}.layers", Claim.When(layers.Is(n), Claim.All(board >= 20_000 * least, board <= 150_000 * least)));
            }

            var resistance = model.Add($"b{b}.resistance", Domain.Range(0, 40_000_000));
            Rule($"eq.{b}.resistance", resistance.EqualTo(45 * board + 2_000_000));
            var fillResistance = model.Add($"b{b}.fill-resistance", Domain.Range(0, 40_000_000));
            Rule($"eq.{b}.fill-resistance", Claim.Table(fillResistance, fill, [.. Enumerable.Range(0, (int)fill.Domain.Count).Select(k => (fill.Domain.At(k), fill.Domain.At(k) * 31 + 7))]));
            if (random.Next(2) == 0)
            {
                Rule($"target.{b}", resistance + fillResistance >= 10_000_000 + 500_000 * random.Next(10));
            }

            var fall = Size($"b{b}.fall", Domain.Of(40, 60, 80), 60);
            var rise = Size($"b{b}.rise", Domain.Range(0, 300_000, 500), 0);
            var upstand = Size($"b{b}.upstand", Domain.Range(75_000, 1_000_000, 5_000), 150_000);
            var run = 3_000_000 + 500_000 * random.Next(8);
            foreach (var n in (long[])[40, 60, 80])
            {
                Rule($"rule.{b}.upstand", Claim.When(fall.Is(n), upstand >= 150_000 + run / n));
                Rule($"rule.{b}.rise", Claim.When(fall.Is(n), rise >= run / n));
            }

            var courses = Size($"b{b}.courses", Domain.Range(0, 40), 4);
            var cap = Size($"b{b}.cap", Domain.Of(50_000, 65_000, 75_000, 100_000), 75_000);
            var height = model.Add($"b{b}.height", Domain.Range(0, 3_000_000, 500));
            preferred.Add(new Wish(height, 450_000 + 50_000 * random.Next(6)));
            Rule($"eq.{b}.height", height.EqualTo(75_000 * courses + cap + 10_000));
            Rule($"rule.{b}.height", height >= upstand + 75_000);
            Rule($"rule.{b}.slender", Claim.When(width <= 300_000, height <= 900_000));
            var over = Size($"b{b}.over", Domain.Range(30_000, 150_000, 5_000), 45_000);
            var overInside = Size($"b{b}.over-inside", Domain.Range(30_000, 150_000, 5_000), 45_000);
            var cover = model.Add($"b{b}.cover", Domain.Range(0, 3_000_000, 500));
            Rule($"eq.{b}.cover", cover.EqualTo(width + over + overInside));
            stock.Add(new SoftClaim($"stock.{b}.cover", cover.In(300_000, 350_000, 400_000, 450_000, 500_000, 550_000, 600_000)));
            should.Add(new SoftClaim($"should.{b}.over", over >= 50_000));
            should.Add(new SoftClaim($"should.{b}.equal", over.EqualTo(overInside)));
            should.Add(new SoftClaim($"should.{b}.upstand", upstand <= 350_000));
            should.Add(new SoftClaim($"should.{b}.fill", fill >= 125_000));
            total += width + board;
            if (before is not null && chained)
            {
                Rule($"rule.{b}.step", height - before >= -100_000);
                Rule($"rule.{b}.stagger", height - before <= 400_000);
            }

            before = height;
        }

        for (var i = 0; i < givens; i++)
        {
            var variable = model.Variables[random.Next(model.Variables.Count)];
            if (variable.Domain.Count <= 200)
            {
                model.Give($"given.{i}.{variable.Name}", variable, variable.Domain.At(random.NextInt64(variable.Domain.Count)));
            }
        }

        if (wishes)
        {
            model.Then(new Level.Wanted("should", should));
            model.Then(new Level.Wished("preferred", preferred));
            model.Then(new Level.Wished("defaults", defaults));
            model.Then(new Level.Wanted("stock", stock));
            model.Then(new Level.Least("thinnest", total));
        }

        return model;

        Variable Size(string name, Domain domain, long wish)
        {
            var variable = model.Add(name, domain);
            defaults.Add(new Wish(variable, wish));
            return variable;
        }

        void Rule(string tag, Claim claim) => model.Require(tag, claim);
    }
}
