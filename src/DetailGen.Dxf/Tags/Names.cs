using System.Buffers;

namespace DetailGen.Dxf.Tags;

/// <summary>Names of layers, styles, blocks, groups and sheets.</summary>
internal static class Names
{
    private const int MostLetters = 255;
    private static readonly SearchValues<char> Forbidden = SearchValues.Create("<>/\\\":;?*|=,`");

    /// <summary>Names are compared without case, and never by the machine's culture.</summary>
    public static StringComparer Comparer => StringComparer.OrdinalIgnoreCase;

    /// <exception cref="ArgumentException">Empty, too long, an outer blank, or a letter that the format forbids.</exception>
    public static void Demand(string name, string what)
    {
        if (name.Length is 0 or > MostLetters || name.AsSpan().Trim().Length != name.Length || name.AsSpan().ContainsAny(Forbidden))
        {
            throw new ArgumentException($"'{name}' cannot be the name of a {what}.");
        }

        DxfString.RefuseControlLetters(name);
    }

    /// <exception cref="ArgumentException">A name occurs twice.</exception>
    public static HashSet<string> Unique(IEnumerable<string> names, string what)
    {
        var set = new HashSet<string>(Comparer);
        foreach (var name in names)
        {
            Demand(name, what);
            if (!set.Add(name))
            {
                throw new ArgumentException($"There are two of the name '{name}' for a {what}.");
            }
        }

        return set;
    }
}
