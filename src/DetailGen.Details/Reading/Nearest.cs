using System.Globalization;

namespace DetailGen.Details.Reading;

/// <summary>Finds what somebody meant to write.</summary>
public static class Nearest
{
    private static readonly char[] Digits = [.. "0123456789"];

    /// <summary>The name that is fewest slips away; null where none is near. Of two equally near the one nearer in size (A4 for A5), else the first in ordinal order.</summary>
    /// <remarks>A slip is a letter too many, too few, another, or two swapped (restricted Damerau-Levenshtein distance).</remarks>
    public static string? To(string written, IEnumerable<string> names)
    {
        // of a figure nobody knows which digit slipped
        if (written.Length > 100 || !written.Any(char.IsLetter))
        {
            return null;
        }

        string? best = null;
        var fewest = Math.Max(2, written.Length / 3) + 1;
        foreach (var name in names.OrderBy(name => Apart(written, name)).ThenBy(name => name, StringComparer.Ordinal))
        {
            var slips = Slips(written.ToLowerInvariant(), name);
            if (slips < fewest)
            {
                (best, fewest) = (name, slips);
            }
        }

        // half of a name is as good a clue as a slip: "outer-leaf" means "wall.outer-leaf", "brick" means "brick-outer"
        return best ?? names.OrderBy(name => name.Length).ThenBy(name => name, StringComparer.Ordinal).FirstOrDefault(name => written.Length >= 3 && IsPart(written, name));
    }

    // how far apart the figures at the end of two names are that begin alike; 0 for other names
    private static int Apart(string written, string name)
    {
        var (mine, other) = (written.TrimEnd(Digits), name.TrimEnd(Digits));
        return string.Equals(mine, other, StringComparison.OrdinalIgnoreCase) && int.TryParse(written.AsSpan(mine.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var one) && int.TryParse(name.AsSpan(other.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var two)
            ? Math.Abs(one - two)
            : 0;
    }

    private static bool IsPart(string written, string name)
    {
        var at = name.IndexOf(written, StringComparison.OrdinalIgnoreCase);
        return at >= 0 && (at == 0 || name[at - 1] is '.' or '-') && (at + written.Length == name.Length || name[at + written.Length] is '.' or '-');
    }

    private static int Slips(string a, string b)
    {
        var rows = new int[3][];
        for (var i = 0; i < 3; i++)
        {
            rows[i] = new int[b.Length + 1];
        }

        for (var j = 0; j <= b.Length; j++)
        {
            rows[0][j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            var (now, last, before) = (rows[i % 3], rows[(i + 2) % 3], rows[(i + 1) % 3]);
            now[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var change = a[i - 1] == b[j - 1] ? 0 : 1;
                now[j] = Math.Min(Math.Min(last[j] + 1, now[j - 1] + 1), last[j - 1] + change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    now[j] = Math.Min(now[j], before[j - 2] + 1);
                }
            }
        }

        return rows[a.Length % 3][b.Length];
    }
}
