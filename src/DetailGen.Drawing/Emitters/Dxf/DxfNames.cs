namespace DetailGen.Drawing.Emitters.Dxf;

/// <summary>Names that the format takes: letters, digits, hyphens; a second of the same name gets a number.</summary>
internal sealed class DxfNames
{
    private const int MostLetters = 60;

    private readonly Dictionary<string, int> _given = new(StringComparer.OrdinalIgnoreCase);

    public string Unique(string wish)
    {
        var letters = wish.AsSpan(0, Math.Min(wish.Length, MostLetters)).ToString().ToCharArray();
        for (var i = 0; i < letters.Length; i++)
        {
            letters[i] = char.IsAsciiLetterOrDigit(letters[i]) ? letters[i] : '-';
        }

        var name = letters.Length == 0 ? "unnamed" : new string(letters);
        while (true)
        {
            var count = _given.GetValueOrDefault(name) + 1;
            _given[name] = count;
            var unique = count == 1 ? name : FormattableString.Invariant($"{name}-{count}");
            if (count == 1 || _given.TryAdd(unique, 1))
            {
                return unique;
            }
        }
    }
}
