using System.Globalization;
using System.Text;

namespace DetailGen.Cli.Terminal;

/// <summary>
/// Messages for a terminal. They repeat what a file holds, and a sign that steers the terminal or turns the direction of writing would act there: it is written as its number instead.
/// A place that takes no messages, such as a full disk, must not end the work: what is left of them is dropped, and that is told by the status.
/// </summary>
internal sealed class ShownMessages(TextWriter writer) : TextWriter(CultureInfo.InvariantCulture)
{
    public override Encoding Encoding => writer.Encoding;

    /// <summary>Whether messages could not be written.</summary>
    internal bool Lost { get; private set; }

    public override void Write(char value) => Write(value.ToString());

    public override void Write(string? value) => Try(() => writer.Write(Shown(value ?? "")));

    public override void WriteLine(string? value) => Try(() => writer.WriteLine(Shown(value ?? "")));

    public override void Flush() => Try(writer.Flush);

    private void Try(Action write)
    {
        if (Lost)
        {
            return;
        }

        try
        {
            write();
        }
        catch (Exception full) when (full is IOException or UnauthorizedAccessException) // a closed handle is told as one without permission
        {
            Lost = true;
        }
    }

    private static string Shown(string text) => text.Any(Steers) ? string.Concat(text.Select(sign => Steers(sign) ? $"\\u{(int)sign:X4}" : sign.ToString())) : text;

    private static bool Steers(char sign) => sign is not ('\n' or '\r' or '\t') && (char.IsControl(sign) || sign is (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069') or '\u200B');
}
