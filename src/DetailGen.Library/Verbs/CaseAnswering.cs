using DetailGen.Details.Reading;
using DetailGen.Library.Reports;
using DetailGen.Physics.Cases;

namespace DetailGen.Library.Verbs;

/// <summary>Answers stand-alone case files of heat and moisture.</summary>
internal static class CaseAnswering
{
    internal static CaseReport Run(CaseRequest request, CaseMatter matter)
    {
        var text = GivenFile.Read(request.File, CaseFile.LargestFile);
        if (!text.IsGood)
        {
            return new(null, [], SolvedReporting.Errors(text.Faults), ExitStatus.WrongInput);
        }

        var answers = CaseFile.Answer(text.Value, request.File, matter, request.Only);
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
}
