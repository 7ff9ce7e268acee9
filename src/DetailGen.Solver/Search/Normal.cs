namespace DetailGen.Solver.Search;

/// <summary>A claim as alternatives, each a set of sums that are all at most 0.</summary>
internal static class Normal
{
    private const int MostAlternatives = 4096;

    /// <exception cref="ArgumentException">The claim falls into more than 4096 alternatives.</exception>
    public static List<List<Linear>> Form(Claim claim)
    {
        switch (claim)
        {
            case Claim.AtMostZero(var sum):
                return [[sum]];
            case Claim.IsZero(var sum):
                return [[sum, -sum]];
            case Claim.Member(var variable, var values):
                return values.Length == 0 ? [[1]] : values.ToList().ConvertAll<List<Linear>>(value => [variable - value, value - variable]);
            case Claim.Lookup lookup:
                return lookup.Rows.Length == 0
                    ? [[1]]
                    : lookup.Rows.ToList().ConvertAll<List<Linear>>(row =>
                        [lookup.Key - row.Key, row.Key - lookup.Key, lookup.Result - row.Result, row.Result - lookup.Result]);
            case Claim.Ratio ratio:
                // Without its domain the divisor may be more.
                var divisors = ratio.Divisor.Without;
                return divisors.Count > MostAlternatives
                    ? throw new ArgumentException($"A claim falls into more than {MostAlternatives} alternatives.", nameof(claim))
                    : Enumerable.Range(0, (int)divisors.Count).Select(place => divisors.At(place)).Where(value => value >= 1).Select(ratio.At).ToList();
            case Claim.AnyOf(var parts):
                return parts.Length == 0 ? [[1]] : Array.ConvertAll(parts, Form).SelectMany(form => form).ToList();
            case Claim.AllOf(var parts):
                List<List<Linear>> all = [[]];
                foreach (var part in parts)
                {
                    var form = Form(part);
                    if (form.Count == 1)
                    {
                        all.ForEach(alternative => alternative.AddRange(form[0]));
                        continue;
                    }

                    all = all.SelectMany(left => form.ConvertAll<List<Linear>>(right => [.. left, .. right])).ToList();
                    if (all.Count > MostAlternatives)
                    {
                        throw new ArgumentException($"A claim falls into more than {MostAlternatives} alternatives.", nameof(claim));
                    }
                }

                return all;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    /// <summary>How far the values fall short of the claim: 0 where it holds.</summary>
    public static Int128 Shortfall(Claim claim, ReadOnlySpan<long> values)
    {
        switch (claim)
        {
            case Claim.AtMostZero(var sum):
                return Int128.Max(0, sum.At(values));
            case Claim.IsZero(var sum):
                return Int128.Abs(sum.At(values));
            case Claim.Member(var variable, { Length: > 0 } among):
                return Propagation.Nearness.Distance(values[variable.Id], among);
            case Claim.AllOf(var parts):
                Int128 most = 0;
                foreach (var part in parts)
                {
                    most = Int128.Max(most, Shortfall(part, values));
                }

                return most;
            case Claim.AnyOf(var parts) when parts.Length > 0:
                var least = Int128.MaxValue;
                foreach (var part in parts)
                {
                    least = Int128.Min(least, Shortfall(part, values));
                }

                return least;
            default:
                var nearest = Int128.MaxValue;
                foreach (var rows in Form(claim))
                {
                    Int128 worst = 0;
                    foreach (var row in rows)
                    {
                        worst = Int128.Max(worst, row.At(values));
                    }

                    nearest = Int128.Min(nearest, worst);
                }

                return nearest;
        }
    }
}
