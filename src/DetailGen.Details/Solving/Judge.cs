using System.Globalization;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;

namespace DetailGen.Details.Solving;

/// <summary>Gives every rule its verdict on a solved detail.</summary>
internal static class Judge
{
    public static Verdict On(Rule rule, Situation situation, SolvedFacts facts)
    {
        var applies = rule.Class != RuleClass.Dormant && !(rule.When is { } when && !when.In(facts).Holds) && (rule.Require is null || situation.Knows(rule.Require));
        if (!applies)
        {
            return Told(rule, Judgement.NotApplicable, rule.Awaits ?? rule.Text, null);
        }

        var kept = rule.Class == RuleClass.Enforced && rule.Require!.In(facts).Holds;
        if (!kept && Waivers.Of(situation.Preset, rule) is { } waiver)
        {
            return Told(rule, Judgement.Waived, SolvingWords.Waived(rule, waiver), rule.Require is null ? null : Deciding(rule.Require, facts));
        }

        if (rule.Class == RuleClass.ToConfirm)
        {
            return Told(rule, Judgement.ToConfirm, rule.Confirm!, null);
        }

        var sides = Deciding(rule.Require!, facts);
        if (kept)
        {
            return Told(rule, Judgement.Pass, Waivers.Covers(situation.Preset, rule) ? SolvingWords.KeptAnyway(rule) : rule.Text, sides);
        }

        return Told(rule, rule.IsHard ? Judgement.Fail : Judgement.Warn, rule.Text, sides);
    }

    /// <summary>A verdict on a U-value, by another figure of it.</summary>
    internal static Verdict Reported(Verdict verdict, decimal transmittance)
    {
        var left = SideOf(Value.Of(transmittance, Kind.UValue));
        var judgement = verdict.Judgement == Judgement.Warn && left.Number <= verdict.Right!.Number ? Judgement.Pass : verdict.Judgement;
        return verdict with { Judgement = judgement, Left = Readable(left, verdict.Right, judgement) };
    }

    private static Verdict Told(Rule rule, Judgement judgement, string text, Compared? sides) =>
        new(rule, judgement, Readable(sides?.Left, sides?.Right, judgement), sides?.Op, Readable(sides?.Right, sides?.Left, judgement), sides?.Unit, text);

    /// <summary>A length in tenths of a millimetre, unless that would hide how it differs from the other side; a U-value as schedules have it, unless that would hide that the rule is broken.</summary>
    private static Side? Readable(Side? side, Side? other, Judgement judgement)
    {
        if (side is not { Number: { } number } || other is not { Number: { } against })
        {
            return side;
        }

        decimal Short(decimal value, int decimals) => Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        if (side.Text.EndsWith(" mm", StringComparison.Ordinal) && (number == against || Short(number, 1) != Short(against, 1)))
        {
            return side with { Text = $"{Printing.Plain(Short(number, 1))} mm" };
        }

        var places = number >= 0.1m ? 2 : 3;
        var told = Short(number, places) >= 0.1m ? 2 : places; // two figures of 0.0998 are 0.10
        return side.Text.EndsWith(" W/m²K", StringComparison.Ordinal) && (judgement == Judgement.Pass || Short(number, places) != Short(against, places))
            ? side with { Text = Short(number, places).ToString("F" + told.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) + " W/m²K" }
            : side;
    }

    /// <summary>The comparison that decides: the failing one of several that all must hold, the holding one of alternatives, or that which comes nearest; a figure before a word.</summary>
    internal static Compared? Deciding(Expression expression, IFacts facts) => expression switch
    {
        Comparison comparison => Of(comparison.Relation.Sign(), comparison.Left.In(facts), comparison.Right.In(facts)),
        Between between => Evaluation.Compare(Relation.AtLeast, between.Left.In(facts), between.Low.In(facts)).Holds
            ? Of("<=", between.Left.In(facts), between.High.In(facts))
            : Of(">=", between.Left.In(facts), between.Low.In(facts)),
        Among among => Listed(among, facts),
        Has has => new Compared(new Side(null, facts.Has(has.Slot) ? "there" : "missing"), "=", new Side(null, "there"), null),
        Not not => Deciding(not.Of, facts) is { } inner ? inner with { Op = Opposite(inner.Op) } : null,
        Both both => both.Left.In(facts).Fails ? Deciding(both.Left, facts)
            : both.Right.In(facts).Fails ? Deciding(both.Right, facts)
            : Figures(Deciding(both.Left, facts), Deciding(both.Right, facts)),
        Either either when either.In(facts).Fails => Nearest(either, facts),
        Either either => (either.Left.In(facts).Holds, either.Right.In(facts).Holds) switch
        {
            (true, false) => Deciding(either.Left, facts),
            (false, true) => Deciding(either.Right, facts),
            _ => Figures(Deciding(either.Right, facts), Deciding(either.Left, facts)),
        },
        _ => null,
    };

    // of a table such as that of joists the row that misses least helps, and not the last one
    private static Compared? Nearest(Either either, IFacts facts) => Alternatives(either).Reverse()
        .Select(one => (Told: Deciding(one, facts), Missed: Missed(one, facts))).Where(one => one.Told is not null)
        .OrderBy(one => one.Missed).ThenBy(one => Short(one.Told!)).FirstOrDefault().Told;

    private static IEnumerable<Expression> Alternatives(Expression expression) =>
        expression is Either either ? Alternatives(either.Left).Concat(Alternatives(either.Right)) : [expression];

    /// <summary>How many of the things that must all hold do not.</summary>
    private static int Missed(Expression expression, IFacts facts) =>
        expression is Both both ? Missed(both.Left, facts) + Missed(both.Right, facts) : expression.In(facts).Fails ? 1 : 0;

    /// <summary>By what part of the wanted figure the drawn one misses it; a word misses by more than any figure.</summary>
    private static decimal Short(Compared told) =>
        told is { Left.Number: { } drawn, Right.Number: { } wanted } ? Math.Abs(drawn - wanted) / Math.Max(Math.Abs(wanted), 0.001m) : decimal.MaxValue;

    private static Compared? Figures(Compared? first, Compared? second) => first?.Left.Number is null && second?.Left.Number is not null ? second : first ?? second;

    private static Compared Of(string op, Value left, Value right)
    {
        var kind = right.IsKnown && left.Kind == Kind.Angle ? right.Kind : left.Kind;
        return new Compared(SideOf(left), op, SideOf(right), kind.Unit());
    }

    private static Compared Listed(Among among, IFacts facts)
    {
        var left = among.Left.In(facts);
        var members = among.Members.Select(member => member.In(facts)).ToList();
        var right = members is [var only] ? SideOf(only) : new Side(null, string.Join(", ", members));
        return new Compared(SideOf(left), members.Count == 1 ? "=" : "in", right, left.Kind.Unit());
    }

    // an angle stands beside slopes, so it is told as the slope it makes
    private static Side SideOf(Value value) => value.Kind switch
    {
        _ when !value.IsKnown => new Side(null, "missing"),
        Kind.Text => new Side(null, value.Text!),
        Kind.Truth => new Side(null, value.ToString()),
        Kind.Length => new Side(value.Number / 1000, value.ToString()),
        Kind.Angle => new Side(Math.Round(Evaluation.SlopeOf(value.Number), 3), value.ToString()),
        Kind.UValue or Kind.RValue => new Side(Math.Round(value.Number, 6), Printing.Amount(Math.Round(value.Number, 4), value.Kind)),
        _ => new Side(value.Number, value.ToString()),
    };

    private static string Opposite(string op) => op switch
    {
        "=" => "!=",
        "!=" => "=",
        ">=" => "<",
        "<=" => ">",
        ">" => "<=",
        "<" => ">=",
        _ => "not " + op,
    };

    /// <summary>The two sides of the comparison that decided, and the unit of both.</summary>
    internal sealed record Compared(Side Left, string Op, Side Right, string? Unit);
}
