using System.Globalization;
using System.Text;
using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;
using DetailGen.Sections;

namespace DetailGen.Details.Parts;

/// <summary>The words of parts, as the components tell them: the junction's before the wall's and the roof's.</summary>
/// <param name="holds">Whether a condition written beside words holds.</param>
internal sealed class Wording(Sizes sizes, IEnumerable<Component> components, Func<Written, bool> holds)
{
    private readonly Parameters.PartWords[] _words = [.. components.SelectMany(component => component.Words)];

    /// <summary>Note, purpose and consequence; each from the first entry that speaks of the part and has it. A further part of a kind has no note.</summary>
    public Sections.PartWords For(Blank blank, Material material)
    {
        var said = _words.Where(words => Speaks(words.Part, blank.Id) && (words.When is null || holds(words.When))).ToArray();
        string Say(Func<Parameters.PartWords, string?> what) =>
            Fill(said.Select(what).FirstOrDefault(text => text is not null) ?? "", material);
        return new(blank.Again ? "" : Say(words => words.Note), Say(words => words.Purpose), Say(words => words.Without));
    }

    private static bool Speaks(string pattern, string id) =>
        pattern.EndsWith('*') ? id.StartsWith(pattern[..^1], StringComparison.Ordinal) : string.Equals(pattern, id, StringComparison.Ordinal);

    private string Fill(string text, Material material)
    {
        var filled = new StringBuilder(text.Length);
        var at = 0;
        while (at < text.Length)
        {
            var open = text.IndexOf('{', at);
            var close = open < 0 ? -1 : text.IndexOf('}', open);
            if (close < 0)
            {
                break;
            }

            filled.Append(text, at, open - at).Append(Value(text[(open + 1)..close], material));
            at = close + 1;
        }

        var sentence = filled.Append(text, at, text.Length - at).ToString();
        return sentence.Length > 0 ? char.ToUpperInvariant(sentence[0]) + sentence[1..] : sentence;
    }

    private string Value(string key, Material material) => key switch
    {
        "material" => Plain(material.Name),
        _ when sizes.HasLength(key) => Length(sizes.Length(key)),
        _ when sizes.HasChoice(key) => sizes.Choice(key),
        _ when key.EndsWith("fall", StringComparison.Ordinal) => string.Create(CultureInfo.InvariantCulture, $"1:{sizes.Number(key)}"),
        _ => sizes.Number(key).ToString(CultureInfo.InvariantCulture),
    };

    private static string Length(double millimetres) => millimetres.ToString("0.##", CultureInfo.InvariantCulture) + " mm";

    // "Clay brickwork, exposed" is called "clay brickwork" in a note; "PIR board" keeps its capitals.
    internal static string Plain(string name)
    {
        var end = name.IndexOfAny([',', '(']);
        var plain = (end < 0 ? name : name[..end]).TrimEnd();
        return plain.Length > 1 && char.IsLower(plain[1]) ? char.ToLowerInvariant(plain[0]) + plain[1..] : plain;
    }
}
