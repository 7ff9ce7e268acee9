using DetailGen.Details;
using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules;
using DetailGen.Details.Sheets;
using DetailGen.Details.Solving;
using DetailGen.Drawing.Lettering;

namespace DetailGen.Library.Working;

/// <summary>All that a practice works from: components, materials, stock sizes, rule packs, sheet data, letters. Read once for a process.</summary>
/// <param name="OwnTypeface">Null where the practice has none of its own.</param>
internal sealed record Office(PresetContext Context, MaterialLibrary Materials, StockLibrary Stock, Catalogue Catalogue, SheetData Sheets, Typeface? OwnTypeface)
{
    private static readonly Lazy<Outcome<Office>> ShippedOffice = new(() => Open(Shelf.Shipped));

    /// <summary>What comes with the tool, with a practice's folder over it where one is named.</summary>
    /// <returns>Every fault of the practice's files.</returns>
    internal static Outcome<Office> Of(string? practice) => practice is null ? ShippedOffice.Value : PracticeFolder.Open(practice).SelectMany(Open);

    /// <summary>Of the practice, else the one that ships, which is read only when something is drawn.</summary>
    internal Typeface Typeface => OwnTypeface ?? Typeface.Shipped;

    private static Outcome<Office> Open(Shelf shelf)
    {
        var packs = Task.Run(() => Packs(shelf)); // the longest texts, read beside the others; nothing that is read depends on another file
        var sheets = Task.Run(() => SheetDataReader.Load(shelf));
        var context = PresetContext.Load(shelf);
        var materials = context.Materials;
        var stock = StockLibrary.Load(shelf);
        IReadOnlyList<Diagnostic> faults =
            [.. context.Components.Faults, .. materials.Faults, .. context.Climates.Faults, .. stock.Faults,
            .. context.Components.Faults.Count == 0 ? stock.Unread(context.Components.All) : []];
        return faults.Count > 0
            ? Outcome.Bad<Office>(faults)
            : from texts in packs.Result
              from usual in UsualValues.Load(shelf, context.Components.All)
              from catalogue in Catalogue.Of(context.Components.All, stock.All, materials.Ids, texts, usual)
              from sheet in sheets.Result
              from own in Typefaces.Of(sheet.Typeface)
              select new Office(context with { RuleIds = RuleIds(catalogue) }, materials, stock, catalogue, sheet, own);
    }

    private static Outcome<IReadOnlyList<PackText>> Packs(Shelf shelf)
    {
        const string root = "presets/rules/";
        var packs = new List<PackText>();
        var faults = new List<Diagnostic>();
        foreach (var name in shelf.Folders(root))
        {
            var files = new List<Node>();
            foreach (var file in shelf.Under($"{root}{name}/"))
            {
                var read = file.Read().ToOutcome();
                faults.AddRange(read.Faults);
                if (read.IsGood)
                {
                    files.Add(read.Value);
                }
            }

            if (files.Count > 0 && !files.Exists(RulePackReader.IsHead))
            {
                faults.Add(RuleMessages.NoHead(files[0].At, name));
            }

            packs.Add(new(name, files));
        }

        return faults.Count == 0 ? Outcome.Good<IReadOnlyList<PackText>>(packs) : Outcome.Bad<IReadOnlyList<PackText>>(faults);
    }

    private static HashSet<string> RuleIds(Catalogue catalogue) =>
        [.. catalogue.Packs.SelectMany(pack => pack.Rules).SelectMany(rule => rule.Aliases.Prepend(rule.Id))];
}
