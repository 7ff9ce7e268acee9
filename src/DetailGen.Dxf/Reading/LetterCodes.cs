using System.Collections.Immutable;
using System.Text;

namespace DetailGen.Dxf.Reading;

/// <summary>Texts of the file as what they say: the other way round than <see cref="Tags.DxfString"/>.</summary>
internal static class LetterCodes
{
    public static string Text(string written) => written.Replace("^ ", "^", StringComparison.Ordinal);

    /// <summary>The lines of a multi-line text. Codes that this project does not write stay as they are, as letters.</summary>
    public static ImmutableArray<string> Lines(string written)
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        var line = new StringBuilder();
        for (var at = 0; at < written.Length; at++)
        {
            var next = at + 1 < written.Length ? written[at + 1] : '\0';
            switch (written[at], next)
            {
                case ('\\', 'P'):
                    lines.Add(line.ToString());
                    line.Clear();
                    at++;
                    break;
                case ('\\', '~'):
                    line.Append('\u00A0');
                    at++;
                    break;
                case ('\\', '\\' or '{' or '}'):
                    line.Append(next);
                    at++;
                    break;
                case ('^', ' '):
                    line.Append('^');
                    at++;
                    break;
                default:
                    line.Append(written[at]);
                    break;
            }
        }

        lines.Add(line.ToString());
        return lines.ToImmutable();
    }
}
