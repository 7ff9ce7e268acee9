using System.Text;
using Spectre.Console;

namespace DetailGen.Cli.Terminal;

/// <summary>A table's place to go: as wide as the terminal, or wide enough for anything where the answer goes to a file or a pipe.</summary>
internal sealed class PlainOutput(TextWriter writer) : IAnsiConsoleOutput
{
    private const int Wide = 240;

    public TextWriter Writer => writer;

    public bool IsTerminal => false;

    public int Width => System.Console.IsOutputRedirected || System.Console.BufferWidth <= 0 ? Wide : System.Console.BufferWidth;

    public int Height => 50;

    public void SetEncoding(Encoding encoding)
    {
    }
}
