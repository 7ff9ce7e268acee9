using DetailGen.Library.Reports;
using Spectre.Console;

namespace DetailGen.Cli.Terminal;

/// <summary>What a change would bring, as tables.</summary>
internal static class WhatIfText
{
    internal static void Write(TextWriter output, WhatIfReport report)
    {
        output.WriteLine($"With {string.Join(", ", report.Set)}: {Summary(report)}");
        // where there was nothing before, what is usual or simply passes is no news
        List<ValueChangeReport> values = [.. report.Values.Where(value => report.SolvedBefore || value.Kind is not ("default" or "equation"))];
        List<VerdictChangeReport> rules = [.. report.Rules.Where(rule => report.SolvedBefore || rule.To is VerdictWords.Fail or VerdictWords.Warn or VerdictWords.Waived)];
        if (values.Count > 0)
        {
            Rows(output, ["value", "now", "then", "why"], values.Select(value => new[] { value.Key, value.From, value.To, value.Why }));
        }

        if (rules.Count > 0)
        {
            Rows(output, ["rule", "now", "then", ""], rules.Select(rule => new[] { rule.Id, rule.From, rule.To, rule.Text }));
        }
    }

    private static string Summary(WhatIfReport report) => report switch
    {
        { SolvedAfter: false } => "no sizes hold together.",
        { SolvedBefore: false } => "sizes hold together, as they do not now.",
        { Values.Count: 0, Rules.Count: 0 } => "nothing changes.",
        { Rules.Count: 0 } => "sizes hold together; every verdict stays as it is.",
        _ => "sizes hold together.",
    };

    private static void Rows(TextWriter output, string[] columns, IEnumerable<string?[]> rows)
    {
        var table = new Table { Border = TableBorder.Simple };
        table.AddColumns(columns);
        foreach (var row in rows)
        {
            table.AddRow([.. row.Select(cell => Markup.Escape(cell ?? "–"))]);
        }

        Answers.Console(output).Write(table);
    }
}
