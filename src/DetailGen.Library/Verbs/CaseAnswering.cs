using DetailGen.Library.Reports;
using DetailGen.Library.Working;
using DetailGen.Physics.Cases;

namespace DetailGen.Library.Verbs;

/// <summary>Answers stand-alone case files of heat and moisture.</summary>
internal static class CaseAnswering
{
    internal static CaseReport Run(CaseRequest request, CaseMatter matter)
    {
        byte[] text;
        try
        {
            text = Text(request.File);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return new(null, [], [UnreadableFile.Of(request.File)], 2);
        }

        var answers = CaseFile.Answer(text, request.File, matter, request.Only);
        return new(
            answers.Json,
            [.. answers.Cases.Select(one => new AnsweredCaseReport(one.Id, one.Kind, one.Title, one.Figures, one.Warnings, one.Checks, one.FailedChecks))],
            [
                .. answers.Faults.Select(fault => new ErrorReport("wrong-case", fault.File, fault.Line, fault.Column, fault.Key, fault.Value, Messages.InCase(fault.Case, fault.Reason), fault.Hint)
                {
                    Case = fault.Case,
                }),
            ],
            answers.Status);
    }

    /// <summary>The file's bytes; of one that has no end, such as a device, one more than is read of any.</summary>
    private static byte[] Text(string file)
    {
        using var input = File.OpenRead(file);
        using var text = new MemoryStream();
        var piece = new byte[1 << 16];
        while (text.Length <= CaseFile.LargestFile && input.Read(piece) is > 0 and var count)
        {
            text.Write(piece, 0, count);
        }

        return text.ToArray();
    }
}
