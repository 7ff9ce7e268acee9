using System.Globalization;
using System.Text;

namespace DetailGen.Cli.Terminal;

/// <summary>
/// Messages for a terminal. They repeat what a file holds, and a sign that steers the terminal or turns the direction of writing would act there: it is written as its number instead.
/// </summary>
internal sealed class ShownMessages(TextWriter writer) : TextWriter(CultureInfo.InvariantCulture)
{
    public override Encoding Encoding => writer.Encoding;

    public override void Write(char value) => Write(value.ToString());

    public override void Write(string? value) => writer.Write(Shown(value ?? ""));

    public override void WriteLine(string? value) => writer.WriteLine(Shown(value ?? ""));

    public override void Flush() => writer.Flush();

    private static string Shown(string text) => text.Any(Steers) ? string.Concat(text.Select(sign => Steers(sign) ? $"\\u{(int)sign:X4}" : sign.ToString())) : text;

    private static bool Steers(char sign) => sign is not ('\n' or '\r' or '\t') && (char.IsControl(sign) || sign is (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069') or '\u200B');
}
