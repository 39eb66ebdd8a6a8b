namespace RackController.Plant;

/// <summary>What acts on one rack from outside: relays, faults and the room. Constant between two changes.</summary>
internal sealed class RackInputs
{
    public RackInputs(int tiers)
    {
        ValveOpen = new bool[tiers];
        WeepBlocked = new bool[tiers];
        StandpipeOpenShare = new double[tiers];
        Array.Fill(StandpipeOpenShare, 1);
        LeakM3PerS = new double[tiers];
        LightW = new double[tiers];
        Ppfd = new double[tiers];
    }

    /// <summary>Share of its full speed at which the pump turns, worn or short of voltage as it may be; 0 while it stands.</summary>
    public double PumpSpeed { get; set; }

    /// <summary>Whether the pump turns.</summary>
    public bool PumpTurns => PumpSpeed > 0;

    /// <summary>Power that the submerged pump puts into the water, W.</summary>
    public double PumpW { get; set; }

    /// <summary>Minor loss coefficient of the clogged screen; 0 when clean.</summary>
    public double ScreenLossK { get; set; }

    /// <summary>Share of the pump's flow that a loose hose spills: 0 to 1.</summary>
    public double HoseLossShare { get; set; }

    /// <summary>Whether each tier's branch lets water pass.</summary>
    public bool[] ValveOpen { get; }

    /// <summary>Whether each weep is blocked.</summary>
    public bool[] WeepBlocked { get; }

    /// <summary>Share of each standpipe that is open: 1 when clean.</summary>
    public double[] StandpipeOpenShare { get; }

    /// <summary>Share of the drain stack that is open: 1 when clean.</summary>
    public double StackOpenShare { get; set; } = 1;

    /// <summary>What each tray leaks to the floor while it holds water.</summary>
    public double[] LeakM3PerS { get; }

    /// <summary>Power of each tier's light, W.</summary>
    public double[] LightW { get; }

    /// <summary>Photon flux that each tier's crop gets, umol/m2/s.</summary>
    public double[] Ppfd { get; }

    /// <summary>Whether a fan moves the rack's air.</summary>
    public bool FanRuns { get; set; }

    /// <summary>Power of the aerator, W.</summary>
    public double AeratorW { get; set; }

    /// <summary>How fast the temperature of the room rises, K/s.</summary>
    public double RoomCPerS { get; set; }

    /// <summary>How fast the vapour pressure of the room rises, kPa/s.</summary>
    public double RoomVapourKPaPerS { get; set; }

    /// <summary>Whether these are the same in every respect.</summary>
    public bool IsSame(RackInputs other) =>
        PumpSpeed == other.PumpSpeed && PumpW == other.PumpW
        && ScreenLossK == other.ScreenLossK && HoseLossShare == other.HoseLossShare
        && FanRuns == other.FanRuns && AeratorW == other.AeratorW
        && RoomCPerS == other.RoomCPerS && RoomVapourKPaPerS == other.RoomVapourKPaPerS
        && ValveOpen.AsSpan().SequenceEqual(other.ValveOpen) && WeepBlocked.AsSpan().SequenceEqual(other.WeepBlocked)
        && StackOpenShare == other.StackOpenShare && StandpipeOpenShare.AsSpan().SequenceEqual(other.StandpipeOpenShare)
        && LeakM3PerS.AsSpan().SequenceEqual(other.LeakM3PerS) && LightW.AsSpan().SequenceEqual(other.LightW)
        && Ppfd.AsSpan().SequenceEqual(other.Ppfd);

    /// <summary>Takes over others.</summary>
    public void CopyFrom(RackInputs other)
    {
        PumpSpeed = other.PumpSpeed;
        PumpW = other.PumpW;
        ScreenLossK = other.ScreenLossK;
        HoseLossShare = other.HoseLossShare;
        FanRuns = other.FanRuns;
        AeratorW = other.AeratorW;
        RoomCPerS = other.RoomCPerS;
        RoomVapourKPaPerS = other.RoomVapourKPaPerS;
        other.ValveOpen.CopyTo(ValveOpen, 0);
        other.WeepBlocked.CopyTo(WeepBlocked, 0);
        StackOpenShare = other.StackOpenShare;
        other.StandpipeOpenShare.CopyTo(StandpipeOpenShare, 0);
        other.LeakM3PerS.CopyTo(LeakM3PerS, 0);
        other.LightW.CopyTo(LightW, 0);
        other.Ppfd.CopyTo(Ppfd, 0);
    }
}
