using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// One row of the cause-and-effect table at one place. It looks at the facts of a scan and says whether it objects to its
/// loads; it sees no other interlock, no schedule and no wish. Once a latch has caught, only a reset lets it go.
/// </summary>
internal abstract class Interlock(CauseAndEffectRow row, Place place, ImmutableArray<LoadId> loads)
{
    /// <summary>The row of the table that this is an instance of.</summary>
    public CauseAndEffectRow Row { get; } = row;

    /// <summary>Where it stands.</summary>
    public Place Place { get; } = place;

    /// <summary>Names this interlock and its alarm for good: <c>north/low-float</c>.</summary>
    public string Key { get; } = $"{place.Name}/{row.Id}";

    /// <summary>The loads that it acts on.</summary>
    public ImmutableArray<LoadId> Loads { get; } = loads;

    /// <summary>The limits of the rack file that it keeps, in words; empty when it has none.</summary>
    public virtual string Settings => "";

    /// <summary>Whether it acts now, by its cause or by its latch.</summary>
    public bool Objects => Present || IsLatched;

    /// <summary>Whether its cause is present now.</summary>
    public bool Present { get; private set; }

    /// <summary>Whether there is something to tell a person: the cause itself, and not merely doubt or a wait that follows it.</summary>
    public bool IsAlarming => Present && !IsInDoubt;

    /// <summary>Whether what it acts on is no more than a doubt or a wait, of which others tell.</summary>
    protected bool IsInDoubt { get; set; }

    /// <summary>Whether that it acts is worth an event: it switches something, and not in the ordinary course of things, nor
    /// because of a doubt that the sensor's own event tells.</summary>
    public bool IsNews => Row.Effect != RowEffect.Tell && !Row.IsOrdinary && (IsAlarming || IsLatched);

    /// <summary>Whether its alarm has no meaning now, by the state of the rack itself.</summary>
    public bool IsSuppressed { get; private set; }

    /// <summary>The circuits that it cuts by their contactors for as long as it objects.</summary>
    public virtual ImmutableArray<CircuitId> MayCut => [];

    /// <summary>Whether its objection, while there is one, concerns one of its loads.</summary>
    public virtual bool ActsOn(LoadId load) => true;

    /// <summary>By how much more than their nameplates the loads of its circuit draw; 1 where nothing is known of that.</summary>
    public virtual double CurrentFactor => 1;

    /// <summary>Whether its circuit comes back one load at a time after this objection.</summary>
    public virtual bool StagesReturn => false;

    /// <summary>Whether its latch has caught.</summary>
    public bool IsLatched { get; private set; }

    /// <summary>Counts up whenever something changed that must be remembered.</summary>
    public long MemoryVersion { get; private set; }

    /// <summary>Looks at the facts and names its next due time on the agenda.</summary>
    /// <returns>Whether its answer is another than before.</returns>
    public bool Look(Facts facts, Agenda agenda)
    {
        var before = (Present, IsInDoubt, IsLatched, IsSuppressed);
        Present = IsPresent(facts, agenda);
        IsSuppressed = HasNoMeaning(facts);
        return (Present, IsInDoubt, IsLatched, IsSuppressed) != before;
    }

    /// <summary>Whether the cause is present by these facts.</summary>
    protected abstract bool IsPresent(Facts facts, Agenda agenda);

    /// <summary>Whether its alarm has no meaning by these facts.</summary>
    protected virtual bool HasNoMeaning(Facts facts) => false;

    /// <summary>Whether a contact that reads its harmful side makes it act at once, so that a proof test of the contact must see
    /// that.</summary>
    public virtual bool ActsOn(SensorId contact) => false;

    /// <summary>Why it objects, as a phrase that can follow "because".</summary>
    public abstract string Words(ClockFace clock);

    /// <summary>Lets the latch go, unless its cause is still there.</summary>
    public bool TryReset()
    {
        if (Present)
        {
            return false;
        }

        IsLatched = false;
        Changed();
        Forget();
        return true;
    }

    /// <summary>The alarm was acknowledged; a few rows come back by that.</summary>
    public virtual void Acknowledged()
    {
    }

    /// <summary>Keeps what must survive a restart.</summary>
    public void Save(MemoryWriter memory)
    {
        memory.Put($"{Key}/latched", IsLatched ? 1 : 0);
        SaveOwn(memory);
    }

    /// <summary>Takes back what an earlier run remembered; what it did not is taken at its worst.</summary>
    public void Restore(MemoryReader memory, Moment start)
    {
        IsLatched = memory.Number($"{Key}/latched") == 1;
        RestoreOwn(memory, start);
    }

    /// <summary>Keeps what must survive a restart besides the latch.</summary>
    protected virtual void SaveOwn(MemoryWriter memory)
    {
    }

    /// <summary>Takes back what <see cref="SaveOwn"/> kept; the latch is back already.</summary>
    protected virtual void RestoreOwn(MemoryReader memory, Moment start)
    {
    }

    /// <summary>Catches the latch: from now on only a reset helps.</summary>
    protected void Latch()
    {
        Invariant.Holds(Row.Returns.HasFlag(WaysBack.Reset), "a row that latches says that it comes back by a reset");
        if (!IsLatched)
        {
            IsLatched = true;
            Changed();
        }
    }

    /// <summary>Forgets the counts that led to a latch, after its reset.</summary>
    protected virtual void Forget()
    {
    }

    /// <summary>Something that must be remembered has changed.</summary>
    protected void Changed() => MemoryVersion++;
}
