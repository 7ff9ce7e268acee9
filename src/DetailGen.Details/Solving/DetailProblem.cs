using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;
using DetailGen.Solver;
using Domain = DetailGen.Solver.Domain;

namespace DetailGen.Details.Solving;

/// <summary>
/// A detail as a model: what must hold (domains, hard stock, equations, claims, hard rules, what is set, targets), then the wishes in order of rank: what the plan usually gives, rules on
/// sheets alone and what sheets usually measure, other musts, shoulds, preferences, advice, defaults, preferred stock, the thinnest. Tags are <c>kind:id</c>.
/// </summary>
internal sealed class DetailProblem
{
    private readonly SortedDictionary<string, Variable> _unknowns = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, long> _wishes = new(StringComparer.Ordinal);
    private readonly Translation _translation;
    private readonly Lazy<Translation> _usual, _insulated;
    private readonly string? _asked;

    /// <param name="ranked">False leaves the wishes out, for questions of whether at all.</param>
    /// <param name="asked">The key of a size that counts as if it were given, since what is asked is which values it could be given; null for none.</param>
    /// <param name="without">Targets to leave out.</param>
    public DetailProblem(Situation situation, IReadOnlyList<Rule> rules, bool ranked = true, string? asked = null, params IReadOnlyList<string> without)
    {
        (Situation, Rules, _asked) = (situation, rules, asked);
        foreach (var parameter in situation.Sizes)
        {
            _unknowns[parameter.Key] = Unknown(parameter);
        }

        _translation = new Translation(Model, situation, _unknowns);
        _usual = new(() => _translation.Counting(OtherLayers(air: true).ToDictionary(layer => layer.Size.Key, layer => (Linear)layer.Usual, StringComparer.Ordinal)));
        _insulated = new(() => _translation.Counting(OtherLayers(air: false).ToDictionary(layer => layer.Size.Key, layer => (Linear)Counted(layer.Size, layer.Usual), StringComparer.Ordinal)));
        foreach (var given in situation.Preset.Set.Where(given => _unknowns.ContainsKey(given.Key)))
        {
            Model.Give("given:" + given.Key, _unknowns[given.Key], given.Value.Number);
        }

        foreach (var claim in situation.Preset.Components.SelectMany(component => component.Claims))
        {
            Require("claim:" + claim.Id, Tree(claim.When), Tree(claim.Require)!);
        }

        foreach (var rule in Active.Where(rule => rule.IsHard))
        {
            Require("rule:" + rule.Id, rule.When, rule.Require!);
        }

        foreach (var target in situation.Preset.Targets.Where(target => !target.Kind.IsSimulated && !without.Contains(target.Key, StringComparer.Ordinal)))
        {
            var limit = new Figure(target.Value, Kind.UValue);
            Require("target:" + target.Key, null, new Comparison(Relation.AtMost, new Key(target.Key, Kind.UValue), limit));
        }

        if (ranked)
        {
            Rank();
        }
    }

    public Model Model { get; } = new();

    public Situation Situation { get; }

    public IReadOnlyList<Rule> Rules { get; }

    public IReadOnlyDictionary<string, Variable> Unknowns => _unknowns;

    /// <summary>Rules that could not be told to the solver and are only judged afterwards.</summary>
    public List<string> Unspoken { get; } = [];

    /// <summary>The value wished for a key by preference or habit; null where there is none.</summary>
    public long? Wish(string key) => _wishes.TryGetValue(key, out var wish) ? wish : null;

    private IEnumerable<Rule> Active => Rules.Where(rule =>
        rule.Class == RuleClass.Enforced && Situation.Knows(rule.Require!) && !(rule.When?.In(Situation).Fails ?? false) && !Waivers.Covers(Situation.Preset, rule));

    private Expression? Tree(Reading.Written? written) => written is null ? null : Situation.Catalogue.Tree(written);

    private void Require(string tag, Expression? when, Expression require)
    {
        if ((when?.In(Situation).Fails ?? false) || !Situation.Knows(require) || require.In(Situation).Holds)
        {
            return;
        }

        if (Spoken(AsksForInsulation(require) ? _insulated.Value : _translation, tag, when, require) is { } claim)
        {
            Model.Require(tag, claim);
        }
    }

    private DetailGen.Solver.Claim? Spoken(Translation by, string tag, Expression? when, Expression require)
    {
        try
        {
            var claim = by.Claim(require);
            return when is null || when.In(Situation).IsKnown ? claim : DetailGen.Solver.Claim.When(by.Claim(when), claim);
        }
        catch (NotLinear)
        {
            Unspoken.Add(tag);
            return null;
        }
    }

    private Variable Unknown(Parameter parameter)
    {
        var domain = parameter.Domain!;
        var range = Domain.Range(domain.From, domain.To, domain.Step);
        if (StockOf(parameter) is not { Force: StockForce.Hard } stock)
        {
            return Model.Add(parameter.Key, range, "domain:" + parameter.Key);
        }

        long[] sold = [.. stock.Values.Where(value => value >= domain.From && value <= domain.To)];
        return sold.Length == 0
            ? Model.Add(parameter.Key, range, "domain:" + parameter.Key)
            : Model.Add(parameter.Key, Domain.Of(sold), "stock:" + parameter.Key, Domain.Range(domain.From, domain.To, 1));
    }

    /// <summary>The sizes it is sold in; null where any will do.</summary>
    public StockClass? StockOf(Parameter parameter)
    {
        var material = Situation.MaterialIn(parameter.Slot)?.Id;
        var own = parameter.StockByMaterial.FirstOrDefault(choice => choice.Material == material)?.Stock;
        return (own ?? parameter.Stock) is { } id ? Situation.Catalogue.Stock(id) : null;
    }

    private void Rank()
    {
        var rules = Active.Where(rule => rule is { IsHard: false, Yields: false }).ToList();
        var (preferred, first, usual, last) = (new List<string>(), new List<string>(), new List<string>(), new List<string>());
        foreach (var given in Situation.Preset.Prefer.Where(given => _unknowns.ContainsKey(given.Key)))
        {
            _wishes[given.Key] = given.Value.Number;
            preferred.Add(given.Key);
        }

        foreach (var parameter in Situation.Sizes.Where(parameter => !_wishes.ContainsKey(parameter.Key) && !Given(parameter.Key)))
        {
            if (Situation.Usual(parameter) is { } setting)
            {
                _wishes[parameter.Key] = setting.Number;
                (parameter.IsDefaultFirst ? first : parameter.IsDefaultLast ? last : usual).Add(parameter.Key);
            }
        }

        // A room is as wide as it is: joists that are too weak for it, or an upstand too low for the run of the fall, are told and not mended by a smaller building.
        Wished("default of the plan", first);

        // Nobody takes thicker lead or another membrane so that something beside it comes nearer by a fraction of a millimetre to what it cannot reach: sheets are as wished for or usual before
        // all softer rules but those on sheets alone.
        var sheets = Situation.Sizes.Where(parameter => IsSheet(parameter) && !Given(parameter.Key)).Select(parameter => parameter.Key).ToHashSet(StringComparer.Ordinal);
        var own = rules.Where(rule => rule.Require!.All().OfType<Key>().All(key => sheets.Contains(key.Name))).ToHashSet();
        Wanted("of sheets", own.Where(rule => rule.Severity != Severity.Advise));
        Wished("preferred sheets", preferred.Where(sheets.Contains));
        Wanted("advice on sheets", own.Where(rule => rule.Severity == Severity.Advise));
        Wished("sheets", usual.Where(sheets.Contains));

        rules.RemoveAll(own.Contains);
        Wanted("must", rules.Where(rule => rule.Severity == Severity.Must));
        Wanted("should", rules.Where(rule => rule.Severity == Severity.Should));
        Wished("prefer", preferred.Where(key => !sheets.Contains(key)));
        Wanted("advise", rules.Where(rule => rule.Severity == Severity.Advise));
        Wished("default", usual.Where(key => !sheets.Contains(key)));
        Wished("default of totals", last);
        Wanted("yielding", Active.Where(rule => rule is { IsHard: false, Yields: true }));
        var stock = new List<SoftClaim>();
        foreach (var parameter in Situation.Sizes)
        {
            if (StockOf(parameter) is { Force: StockForce.Prefer } sold && !Given(parameter.Key))
            {
                stock.Add(new SoftClaim("stock:" + parameter.Key, _unknowns[parameter.Key].In([.. sold.Values])));
            }
        }

        Model.Then(new Level.Wanted("stock", stock));
        var thickness = Situation.Sizes.Where(parameter => parameter.Unit == Unit.Length && !Given(parameter.Key))
            .Aggregate((Linear)0, (sum, parameter) => sum + _unknowns[parameter.Key]);
        Model.Then(new Level.Least("thinnest", thickness));
    }

    /// <summary>No sheet, such as a membrane of mastic asphalt, is made thicker, µm.</summary>
    private const long ThickestSheet = 30_000;

    private bool IsSheet(Parameter parameter) =>
        parameter is { Unit: Unit.Length, Domain.To: <= ThickestSheet } && Situation.MaterialIn(parameter.Slot) is { Kind: "membrane" or "metal" };

    private bool Given(string key) => key == _asked || Situation.Preset.Set.Any(given => given.Key == key);

    // whatever is said of a U-value or a resistance is that it be good enough
    private static bool AsksForInsulation(Expression expression) => OnTransmittance(expression) && expression.All().OfType<Comparison>().All(said =>
        !OnTransmittance(said) || said is { Left: Key { Kind: Kind.UValue }, Relation: Relation.AtMost or Relation.Less } or { Left: Key { Kind: Kind.RValue }, Relation: Relation.AtLeast or Relation.More });

    private static bool OnTransmittance(Expression expression) => expression.All().Any(part => part is Key { Kind: Kind.UValue or Kind.RValue });

    // A U-value is for the insulation alone to reach: no one thickens render, plaster or blocks for it. So a rule on it is met, or missed by so much, by a wall or roof whose other layers
    // are as usual.
    private void Wanted(string name, IEnumerable<Rule> rules)
    {
        var claims = new List<SoftClaim>();
        foreach (var rule in rules.Where(rule => !rule.Require!.In(Situation).IsKnown))
        {
            var tag = "rule:" + rule.Id;
            if (Spoken(OnTransmittance(rule.Require!) ? _usual.Value : _translation, tag, rule.When, rule.Require!) is { } claim)
            {
                claims.Add(new SoftClaim(tag, claim, rule.IsWhole ? 0 : 1));
            }
        }

        Model.Then(new Level.Wanted(name, claims));
    }

    private long? Preferred(string key) => Situation.Preset.Prefer.FirstOrDefault(given => given.Key == key)?.Value.Number;

    /// <summary>Layers that do not insulate and whose thickness is open, with the thickness wished for or usual, micrometres.</summary>
    /// <param name="air">Air too, which dabs make as wide as they are thick.</param>
    private IEnumerable<(Parameter Size, long Usual)> OtherLayers(bool air)
    {
        foreach (var (layer, kind, material) in Resistances.Layers(Situation, "wall").Concat(Resistances.Layers(Situation, "roof")))
        {
            if (material?.Kind != "insulation" && (air || kind != Sections.LayerKind.Air) && layer.Thickness is Key { Name: var key } && !Given(key)
                && Situation.Sizes.FirstOrDefault(parameter => parameter.Key == key) is { } parameter && (Preferred(key) ?? Situation.Usual(parameter)?.Number) is { } thick)
            {
                yield return (parameter, thick);
            }
        }
    }

    // The lesser of what a layer measures and what it usually does: nobody casts a deeper screed for a U-value, and one that is thinner than usual gives less.
    private Variable Counted(Parameter size, long usual)
    {
        var counted = Model.Add(size.Key + " as counted", Domain.Range(0, usual, Math.Max(1, _unknowns[size.Key].Domain.Step)));
        Model.Require(null, counted <= _unknowns[size.Key]);
        return counted;
    }

    private void Wished(string name, IEnumerable<string> keys) =>
        Model.Then(new Level.Wished(name, [.. keys.Select(key => new Wish(_unknowns[key], _wishes[key]))]));
}

/// <summary>Rules that the author sets aside.</summary>
internal static class Waivers
{
    public static bool Covers(Preset preset, Rule rule) => Of(preset, rule) is not null;

    public static Waiver? Of(Preset preset, Rule rule) => preset.Waivers.FirstOrDefault(waiver => rule.Names(waiver.Rule));
}
