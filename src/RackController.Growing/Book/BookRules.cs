using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace RackController.Growing;

/// <summary>What may be put into the growing book. What is refused is impossible; what is only unwise is put down, since it
/// happened.</summary>
public static class BookRules
{
    /// <summary>The most words in one field.</summary>
    public const int MostText = 500;

    /// <summary>The most characters in a lot code or the name of a crop.</summary>
    public const int MostName = 60;

    // Nothing grows on a tier for longer, and nobody plans further.
    private const int FarYears = 2;

    // A crop that gives more from one insert tray than it weighs itself is a slip of the pen (common practice, no source).
    private const double MostGPerTray = 20_000;

    /// <summary>A text as it is put down: on one line, without blanks around it and marks that turn the direction of writing, and no longer
    /// than one may be.</summary>
    /// <param name="text">The text; null for none.</param>
    public static string Cut(string? text)
    {
        var line = string.Concat((text ?? "").Select(letter => char.IsControl(letter) || IsMark(letter) ? ' ' : letter)).Trim();
        return line.Length > MostText ? line[..MostText].TrimEnd() : line;
    }

    private static bool IsMark(char letter) => char.GetUnicodeCategory(letter)
        is UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Surrogate;

    /// <summary>What is wrong with an entry.</summary>
    /// <param name="book">The book that it is to stand in.</param>
    /// <param name="entry">The entry.</param>
    /// <param name="places">How many insert trays stand on a tier; null for a name that is no tier of the site.</param>
    /// <param name="today">The local date.</param>
    /// <returns>A sentence; null where nothing is wrong.</returns>
    public static string? WhatIsWrong(GrowingBook book, BookEntry entry, Func<string, int?> places, LocalDate today)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(places);
        return entry switch
        {
            BatchTakenUp start => WhatIsWrongWith(start, book, places, today),
            BatchEntry about when book.Batch(about.Lot) is null => $"There is no batch {about.Lot}.",
            BatchEntry about => WhatIsWrongWith(about, book.Batch(about.Lot)!, places, today) ?? TooFull(about, book, places, today),
            EntryStruck struck => WhatIsWrongWith(struck, book),
            _ => null,
        };
    }

    private static string? WhatIsWrongWith(
        BatchTakenUp start, GrowingBook book, Func<string, int?> places, LocalDate today) =>
        book.Batch(start.Lot) is not null ? $"There is a batch {start.Lot} already."
        : start.Lot.Length is 0 or > MostName || start.Lot != Cut(start.Lot) ? $"A lot code has 1 to {MostName} characters on one line."
        : start.Crop.Length is 0 or > MostName ? $"The name of a crop has 1 to {MostName} characters."
        : start.Trays is < 1 or > 10_000 ? "A batch has 1 to 10,000 trays."
        : !IsNear(start.Sow, today) ? $"{PlanDates.Full(start.Sow)} is too far away to sow on."
        : FarAway(start.Course, start.Harvest, today) is { } far ? far
        : !start.Stages.All(IsPossible) ? $"What {start.Crop} needs is not possible: look at its stages in the crops file."
        : start.Stages.IsEmpty ? $"The crop {start.Crop} has no stage in the light."
        : start.Harvest < start.Sow ? "It would be harvested before it was sown."
        : start.Course.SelectMany(step => step.Places).Select(place => WhatIsWrongWith(place, places))
            .FirstOrDefault(wrong => wrong is not null);

    private static string? WhatIsWrongWith(BatchEntry entry, BookedBatch batch, Func<string, int?> places, LocalDate today) => entry switch
    {
        BatchSown when batch.Sown is not null => $"{batch.Lot} was sown on {Day(batch.Sown.Day)} already.",
        BatchSown sown => Future(sown.Day, today)
            ?? (IsNear(sown.Day, today) ? null : $"{PlanDates.Full(sown.Day)} is too long ago to grow still."),
        BatchReplanned replanned => FarAway(replanned.Course, replanned.Harvest, today) is { } far ? far
            : replanned.Harvest < batch.Start.Sow ? "It would be harvested before it was sown."
            : replanned.Course.SelectMany(step => step.Places).Select(place => WhatIsWrongWith(place, places))
                .FirstOrDefault(wrong => wrong is not null),
        BatchMoved moved => Future(moved.Day, today) ?? NotYetSown(batch, moved.Day) ?? WhatIsWrongWith(moved, batch, places),
        BatchHarvested harvested => Future(harvested.Day, today) ?? NotYetSown(batch, harvested.Day) ?? TooMany(harvested.Trays, batch)
            ?? NotThere(harvested.From, harvested.Trays)
            ?? (harvested.WeightG >= 0 && harvested.WeightG <= MostGPerTray * harvested.Trays
                ? null
                : "That weight cannot come from so few trays: give it in g."),
        BatchDiscarded discarded => Future(discarded.Day, today) ?? NotYetSown(batch, discarded.Day) ?? TooMany(discarded.Trays, batch)
            ?? NotThere(discarded.From, discarded.Trays),
        BatchNoted { Text: "" } => "There is nothing in the note.",
        _ => null,
    };

    private static string? WhatIsWrongWith(BatchMoved moved, BookedBatch batch, Func<string, int?> places) =>
        moved.Stage < 0 || moved.Stage >= batch.Start.Stages.Length ? $"{batch.Lot} has {batch.Start.Stages.Length} stages in the light."
        : moved.Places.IsEmpty ? "Say on which tier its trays stand."
        : moved.Places.GroupBy(place => place.Tier, StringComparer.Ordinal).FirstOrDefault(same => same.Count() > 1) is { } twice
            ? $"{twice.Key} stands there twice."
        : moved.Places.Select(place => WhatIsWrongWith(place, places)).FirstOrDefault(wrong => wrong is not null)
            ?? (moved.Places.Sum(place => place.Trays) is var trays && trays == batch.TraysLeft
                ? null
                : $"{batch.Lot} has {batch.TraysLeft} trays, and {trays} of them are on tiers then: say where all of them stand.");

    private static string? WhatIsWrongWith(StandsOn place, Func<string, int?> places) =>
        places(place.Tier) is not { } most ? $"There is no tier {place.Tier}."
        : place.Trays < 1 || place.Trays > most ? $"{place.Tier} has room for {most} insert trays."
        : null;

    private static string? WhatIsWrongWith(EntryStruck struck, GrowingBook book) =>
        book.Entries.FirstOrDefault(one => one.Number == struck.Number) is not { } old ? $"There is no entry {struck.Number}."
        : old.Entry is EntryStruck ? "What was struck stays struck: put it down anew."
        : book.Struck.ContainsKey(struck.Number) ? $"Entry {struck.Number} is struck already."
        : struck.Why.Length == 0 ? "Say why it was wrong."
        : old.Entry is BatchTakenUp or BatchSown && WhatHangsOn(old, book) is { } later
            ? $"Entry {later} came of it: strike that one first."
        : null;

    // What was done with a batch hangs on its sowing, and all of it on its being taken up.
    private static long? WhatHangsOn(WrittenEntry old, GrowingBook book) => book.Of(((BatchEntry)old.Entry).Lot)
        .LastOrDefault(one => !book.Struck.ContainsKey(one.Number) && (old.Entry is BatchTakenUp
            ? one.Entry is BatchSown
            : one.Entry is BatchMoved or BatchHarvested or BatchDiscarded))?.Number;

    // A tier has room for so many trays, whoever they are of.
    private static string? TooFull(BatchEntry entry, GrowingBook book, Func<string, int?> places, LocalDate today)
    {
        if (entry is not BatchMoved moved)
        {
            return null;
        }

        var others = book.StandingOn(today, byDate: false).Where(one => one.Batch.Lot != moved.Lot).ToLookup(one => one.Tier);
        var full = moved.Places.FirstOrDefault(place => place.Trays + others[place.Tier].Sum(one => one.Trays) > places(place.Tier));
        if (full is null)
        {
            return null;
        }

        var (there, whose) = (others[full.Tier].Sum(one => one.Trays), others[full.Tier].Select(one => one.Batch.Lot).Distinct());
        return $"{full.Tier} has room for {places(full.Tier)} insert trays, and {there} stand there already: {string.Join(", ", whose)}. "
            + "Put down first where those went.";
    }

    private static string? NotThere(ImmutableArray<StandsOn> from, int trays) =>
        from.IsEmpty || (from.All(place => place.Trays > 0) && from.Sum(place => place.Trays) == trays) ? null
        : $"Say from which tiers all {trays} trays are.";

    // Days are reckoned with later, which ends where the calendar does.
    private static string? FarAway(ImmutableArray<CourseStep> course, LocalDate harvest, LocalDate today)
    {
        var far = course.Select(step => step.Day).Append(harvest).Where(day => !IsNear(day, today)).ToList();
        return far.Count == 0 ? null : $"{PlanDates.Full(far[0])} is too far away to grow until.";
    }

    private static bool IsNear(LocalDate day, LocalDate today) => day >= today.PlusYears(-FarYears) && day <= today.PlusYears(FarYears);

    private static bool IsPossible(LitStage stage) => stage.Name.Length <= MostName
        && IsWithin(stage.PhotoperiodH, 24) && IsWithin(stage.DailyLightMolPerM2D, 200) && IsWithin(stage.PpfdUmolPerM2S, 5000)
        && stage.Floods.Any(floods => floods.Media is null) && stage.Floods.All(floods => IsWithin(floods.PerDay, 96))
        && IsWithin(stage.Days, 1000);

    private static bool IsWithin(Bounds bounds, double most) => bounds.Least >= 0 && bounds.Most <= most && bounds.Least <= bounds.Most;

    private static bool IsWithin(WholeBounds bounds, int most) => bounds.Least >= 0 && bounds.Most <= most && bounds.Least <= bounds.Most;

    private static string? Future(LocalDate day, LocalDate today) => day > today ? $"{Day(day)} is still to come." : null;

    private static string? NotYetSown(BookedBatch batch, LocalDate day) => batch.Sown is not { } sown ? $"{batch.Lot} is not sown yet."
        : day < sown.Day ? $"{batch.Lot} was sown on {Day(sown.Day)}, after that."
        : null;

    private static string? TooMany(int trays, BookedBatch batch) => trays < 1 || trays > batch.TraysLeft
        ? $"{batch.Lot} has {batch.TraysLeft} trays left."
        : null;

    private static string Day(LocalDate day) => PlanDates.Day(day);
}
