using DetailGen.Library.Reports;
using Spectre.Console;

namespace DetailGen.Cli.Terminal;

/// <summary>Brings reports to the terminal: JSON alone on standard output, or text there and what went wrong on standard error.</summary>
internal static class Answers
{
    internal static int Tell(Screen screen, DetailsReport report, bool json, Action<TextWriter, DetailReport> text)
    {
        if (json)
        {
            screen.Output.Write(ReportJson.Write(report));
        }

        foreach (var detail in report.Details)
        {
            foreach (var error in detail.Errors ?? [])
            {
                Tell(screen.Messages, error);
            }

            foreach (var warning in detail.Warnings)
            {
                screen.Messages.WriteLine($"{detail.Preset}: {warning}");
            }

            if (!json)
            {
                text(screen.Output, detail);
            }
        }

        if (!json && report.Details.Count > 1)
        {
            DetailsText.Summary(screen.Output, report.Details);
        }

        return report.Status;
    }

    internal static int Tell(Screen screen, ExplainReport report, bool json)
    {
        if (json)
        {
            screen.Output.Write(ReportJson.Write(report));
        }

        Tell(screen.Messages, report.Errors);
        if (!json)
        {
            foreach (var explained in report.Explained)
            {
                screen.Output.WriteLine(explained.Title);
                foreach (var line in explained.Text)
                {
                    screen.Output.WriteLine($"  {line}");
                }

                foreach (var source in explained.Sources)
                {
                    screen.Output.WriteLine($"  Source: {source}");
                }

                screen.Output.WriteLine();
            }

            if (report.WhatIf is { } whatIf)
            {
                WhatIfText.Write(screen.Output, whatIf);
            }

            if (report.Conflict is { } conflict)
            {
                DetailsText.Conflict(screen.Output, conflict);
            }
        }

        return report.Status;
    }

    internal static int Tell(Screen screen, RangeReport report, bool json)
    {
        Open(screen, json ? ReportJson.Write(report) : "", report.Preset, report.Errors, report.Warnings);
        NoSizes(screen, json ? null : report.Conflict, $"{report.Detail}: no sizes hold together, so there are no ranges.");

        if (!json && report.Ranges.Count > 0)
        {
            RangeText.Write(screen.Output, report);
        }

        return report.Status;
    }

    private static void Open(Screen screen, string document, string preset, IReadOnlyList<ErrorReport>? errors, IReadOnlyList<string> warnings)
    {
        screen.Output.Write(document);
        Tell(screen.Messages, errors);
        foreach (var warning in warnings)
        {
            screen.Messages.WriteLine($"{preset}: {warning}");
        }
    }

    private static void NoSizes(Screen screen, ConflictReport? conflict, string told)
    {
        if (conflict is not null)
        {
            screen.Output.WriteLine(told);
            DetailsText.Conflict(screen.Output, conflict);
        }
    }

    internal static int Tell(Screen screen, SweepReport report, bool json)
    {
        Open(screen, json ? ReportJson.Write(report) : "", report.Preset, report.Errors, report.Warnings);
        NoSizes(screen, json ? null : report.Conflict, $"{report.Detail}: no sizes hold together, so there is no curve.");
        if (!json && report.Rows.Count > 0)
        {
            screen.Output.Write(report.ToCsv());
            if (report.Picture is { } picture)
            {
                screen.Messages.WriteLine($"Written: {picture.Path}");
            }
        }

        return report.Status;
    }

    internal static int Tell(Screen screen, SurfacesReport report, bool json)
    {
        Open(screen, json ? ReportJson.Write(report) : "", report.Preset, report.Errors, report.Warnings);
        NoSizes(screen, json ? null : report.Conflict, $"{report.Detail}: no sizes hold together, so there are no temperatures.");
        if (!json && report.Surfaces.Count > 0)
        {
            screen.Output.Write(report.ToCsv());
        }

        return report.Status;
    }

    internal static int Tell(Screen screen, ListReport report, bool json)
    {
        if (report.Errors is { Count: > 0 } errors)
        {
            return Refuse(screen, json, errors, report.Status);
        }

        if (json)
        {
            screen.Output.Write(report.ToJson());
            return report.Status;
        }

        var table = new Spectre.Console.Table { Border = TableBorder.Simple };
        table.AddColumns([.. report.Columns]);
        foreach (var row in report.Rows)
        {
            table.AddRow([.. report.Columns.Select(column => Markup.Escape(row.TryGetValue(column, out var value) ? Words(value) : ""))]);
        }

        Console(screen.Output).Write(table);
        foreach (var (key, value) in report.Further)
        {
            Tell(screen.Output, key, value);
        }

        return report.Status;
    }

    internal static int Tell(Screen screen, TextReport report, bool json)
    {
        if (report.Errors is { Count: > 0 } errors)
        {
            return Refuse(screen, json, errors, report.Status);
        }

        if (json && !report.IsDocument)
        {
            screen.Output.Write(ReportJson.Write(report));
        }
        else if (report.File is { } file)
        {
            screen.Messages.WriteLine($"Written: {file}");
        }
        else
        {
            screen.Output.Write(report.Text);
        }

        return report.Status;
    }

    internal static int Refuse(Screen screen, bool json, string code, string reason, string hint) =>
        Refuse(screen, json, [ErrorReport.Of(code, "", reason, hint)], ExitStatus.WrongInput);

    internal static IAnsiConsole Console(TextWriter output) => AnsiConsole.Create(new AnsiConsoleSettings
    {
        Out = new PlainOutput(output),
        Ansi = AnsiSupport.No,
        ColorSystem = ColorSystemSupport.NoColors,
        Interactive = InteractionSupport.No,
    });

    internal static int Refuse(Screen screen, bool json, IReadOnlyList<ErrorReport> errors, int status)
    {
        if (json)
        {
            screen.Output.Write(ReportJson.Write(new ErrorsReport(errors)));
        }

        Tell(screen.Messages, errors);
        return status;
    }

    private static void Tell(TextWriter messages, IReadOnlyList<ErrorReport>? errors)
    {
        foreach (var error in errors ?? [])
        {
            Tell(messages, error);
        }
    }

    internal static void Tell(TextWriter messages, ErrorReport error)
    {
        var place = error.File.Length == 0 ? "" : error.Line is not null ? $"{error.File}:{error.Line}:{error.Column}: " : $"{error.File}: ";
        messages.WriteLine($"{place}{error.Reason}{(error.Hint is { Length: > 0 } hint ? " " + hint : "")}");
    }

    private static void Tell(TextWriter output, string key, object? value)
    {
        output.WriteLine($"{char.ToUpperInvariant(key[0])}{key[1..]}:");
        foreach (var map in value as IEnumerable<IReadOnlyDictionary<string, object?>> ?? [(IReadOnlyDictionary<string, object?>)value!])
        {
            output.WriteLine($"  {string.Join(", ", map.Where(pair => pair.Value is not null).Select(pair => $"{pair.Key} {Words(pair.Value)}"))}");
        }

        output.WriteLine();
    }

    private static string Words(object? value) => value switch
    {
        null => "",
        string text => text,
        IEnumerable<string> texts => string.Join(", ", texts),
        _ => Convert.ToString(value, System.Globalization.CultureInfo.InvariantCulture) ?? "",
    };
}
