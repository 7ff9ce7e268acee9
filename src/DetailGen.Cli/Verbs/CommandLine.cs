using System.CommandLine;
using DetailGen.Cli.Terminal;
using DetailGen.Library;
using DetailGen.Library.Reports;

namespace DetailGen.Cli.Verbs;

/// <summary>The verbs, their arguments and the exit status: 0 done, 1 the detail does not hold, 2 wrong input, 3 output not written, 4 internal fault.</summary>
public static class CommandLine
{
    /// <summary>Runs one command line. With <c>--json</c> one document goes to <paramref name="output"/> and nothing else.</summary>
    public static int Run(string[] arguments, TextWriter output, TextWriter messages)
    {
        using var shown = new ShownMessages(messages);
        var status = RunShown(arguments, output, shown);
        return shown.Lost ? Math.Max(status, ExitStatus.NotWritten) : status;
    }

    private static int RunShown(string[] arguments, TextWriter output, ShownMessages messages)
    {
        var json = arguments.Contains("--json", StringComparer.Ordinal);
        try
        {
            var root = Root(new(output, messages));
            var parsed = root.Parse(arguments);
            return parsed.Errors.Count > 0 && parsed.Action is not System.CommandLine.Help.HelpAction
                ? WrongArguments(parsed, json, output, messages)
                : parsed.Invoke(new InvocationConfiguration { Output = output, Error = messages, EnableDefaultExceptionHandler = false });
        }
        catch (IOException pipe) when (pipe.Message.Contains("pipe", StringComparison.OrdinalIgnoreCase))
        {
            return ExitStatus.NotWritten;
        }
        catch (Exception full) when (full is IOException or UnauthorizedAccessException)
        {
            // files are read and written where their faults become values: what is left is standard output
            messages.WriteLine($"Standard output could not be written: {full.Message.Trim().TrimEnd('.')}. Send it to a place with room for it.");
            return ExitStatus.NotWritten;
        }
#pragma warning disable CA1031 // the last door: our own bug must not reach the user as a stack trace
        catch (Exception fault)
#pragma warning restore CA1031
        {
            return Answers.Refuse(new(output, messages), json, [DetailLibrary.InternalFault(fault)], ExitStatus.InternalFault);
        }
    }

    internal static Option<bool> Json { get; } = new("--json") { Description = "Print one JSON document on standard output and nothing else there." };

    private static RootCommand Root(Screen screen)
    {
        var root = new RootCommand("Junction details of flat roofs and walls: solved, checked, drawn and explained.");
        root.Subcommands.Add(DrawVerb.Command(screen));
        root.Subcommands.Add(NewVerb.Command(screen));
        root.Subcommands.Add(CheckVerb.Command(screen));
        root.Subcommands.Add(ExplainVerb.Command(screen));
        root.Subcommands.Add(RangeVerb.Command(screen));
        root.Subcommands.Add(HeatVerb.Command(screen));
        root.Subcommands.Add(MoistureVerb.Command(screen));
        root.Subcommands.Add(InspectVerb.Command(screen));
        root.Subcommands.Add(ListVerb.Command(screen));
        root.Subcommands.Add(SchemaVerb.Command(screen));
        foreach (var verb in root.Subcommands)
        {
            if (verb.Name != "inspect") // a drawing tells itself what it was made from
            {
                verb.Options.Add(Arguments.Practice);
            }

            verb.Options.Add(Json);
            Arguments.KeepOptionsApart(verb);
        }

        root.SetAction(_ =>
        {
            root.Parse("--help").Invoke(new InvocationConfiguration { Output = screen.Output, Error = screen.Messages });
            return ExitStatus.Done;
        });
        return root;
    }

    private static int WrongArguments(ParseResult parsed, bool json, TextWriter output, TextWriter messages)
    {
        var command = parsed.CommandResult.Command;
        var hint = $"See detailgen {(command is RootCommand ? "" : command.Name + " ")}--help.";
        List<string> reasons = [.. Faults.Of(parsed)];
        if (json)
        {
            output.Write(ReportJson.Write(new ErrorsReport([.. reasons.Select(reason => ErrorReport.Of("wrong-argument", "", reason, hint))])));
        }

        foreach (var reason in reasons)
        {
            messages.WriteLine(reason);
        }

        messages.WriteLine(hint);
        return ExitStatus.WrongInput;
    }
}
