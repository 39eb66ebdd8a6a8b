namespace RackController.Growing;

/// <summary>
/// How often media have to be flooded, as irrigation is timed in FAO Irrigation and Drainage Paper 56 (Allen et al. 1998, chapter 8, from
/// memory): of the water that they hold between full and dry a share may go, RAW = p TAW, and what crops give off uses that up. Here a
/// flood may be too short to refill all of it, so that from flood to flood there is less.
/// </summary>
public sealed record FloodNeed
{
    /// <summary>Water that the media of a tray give between full and dry, TAW, L: above 0.</summary>
    public required double HeldL { get; init; }

    /// <summary>Share of it that may go before the next flood, p: above 0 to 1.</summary>
    public required double DepletedShare { get; init; }

    /// <summary>Share of what is missing that a flood refills: above 0 to 1.</summary>
    public required double RefilledShare { get; init; }

    /// <summary>What the crop gives off while lit, L/h: from 0.</summary>
    public required double LitLPerH { get; init; }

    /// <summary>What it gives off in the dark, L/h: from 0.</summary>
    public required double DarkLPerH { get; init; }

    /// <summary>How long it is lit each day, h: 0 to 24.</summary>
    public required double LitH { get; init; }

    /// <summary>Water that may go before crops go short, RAW, L.</summary>
    public double AllowedL => DepletedShare * HeldL;

    /// <summary>What may go from one flood to the next, L: at the driest <see cref="AllowedL"/> is missing, and a flood leaves its part of
    /// that behind.</summary>
    public double BetweenFloodsL => AllowedL * RefilledShare;

    /// <summary>What a day takes, L.</summary>
    public double DailyL => LitH * LitLPerH + (24 - LitH) * DarkLPerH;

    /// <summary>The fewest floods a day that keep it within, when each comes as soon as it has to: at least one.</summary>
    public int FloodsADay => Math.Max(1, (int)Math.Ceiling(DailyL / BetweenFloodsL));

    /// <summary>The longest time between two floods while lit, h.</summary>
    public double LitIntervalH => BetweenFloodsL / LitLPerH;

    /// <summary>The longest time between two floods in the dark, h.</summary>
    public double DarkIntervalH => BetweenFloodsL / DarkLPerH;
}
