namespace DetailGen.Drawing.Fills;

/// <summary>Repeatable accident: well-mixed numbers from a part, a fill and a cell. Plain checksums show as a lattice on paper.</summary>
public static class Mixing
{
    /// <summary>A number for a name, the same on every machine.</summary>
    public static ulong Of(string name)
    {
        unchecked
        {
            var sum = 14695981039346656037UL;
            foreach (var letter in name)
            {
                sum = (sum ^ letter) * 1099511628211UL;
            }

            return Stir(sum);
        }
    }

    public static ulong Of(ulong seed, int i, int j) =>
        unchecked(Stir(seed ^ Stir((ulong)(uint)i * 0x9E3779B97F4A7C15UL ^ Stir((ulong)(uint)j + 0x632BE59BD9B4E019UL))));

    /// <summary>The next number drawn from one, from 0 up to but not including 1.</summary>
    public static double Draw(ref ulong state)
    {
        state = unchecked(state + 0x9E3779B97F4A7C15UL);
        return (Stir(state) >> 11) * (1.0 / (1UL << 53));
    }

    // Finaliser with the shifts and factors of the splitmix generator (Steele, Lea and Flood, 2014; from memory).
    private static ulong Stir(ulong z)
    {
        unchecked
        {
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }
}
