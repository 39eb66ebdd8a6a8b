using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Cuts the pump when floats of one vessel say what cannot be true together: a lower one dry while a higher one is wet, or a low float
/// wet while the level is far below it. Hazard: one of them will not speak when it must, and nobody knows which. It latches, and
/// nobody lets it go before every float involved has passed a proof test. A float that is under test is moved by hand and not judged
/// meanwhile: what it says then forbids the pump by its own row.
/// </summary>
internal sealed class FloatsContradict : Interlock
{
    private readonly Rack rack;
    private readonly ImmutableArray<FloatPair> pairs;
    private readonly ImmutableArray<Sensor> floats;
    private readonly bool[] owesTest;
    private MonotonicTime? since;
    private FloatPair? standing;

    public FloatsContradict(CauseAndEffectRow row, Rack rack, Place vessel, ImmutableArray<FloatPair> pairs)
        : base(row, vessel, [rack.Pump.Load])
    {
        this.rack = rack;
        this.pairs = pairs;
        floats = [.. pairs.SelectMany(pair => pair.Floats).Distinct()];
        owesTest = new bool[floats.Length];
    }

    public override string Settings => $"for {rack.Limits.FloatsContradictAfter.InWords()}";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        var found = Find(facts);
        since = found is null ? null : since ?? facts.Now.Monotonic;
        if (since + rack.Limits.FloatsContradictAfter > facts.Now.Monotonic)
        {
            agenda.Add(since!.Value + rack.Limits.FloatsContradictAfter);
            found = null;
        }

        if (found is not null && found != standing)
        {
            Doubt(found);
        }

        standing = found;
        TakePasses(facts);
        return standing is not null || owesTest.Contains(true);
    }

    public override string Words(ClockFace clock) => standing is not null
        ? standing.Words
        : Present
            ? $"floats contradicted each other; still to pass a proof test: {Debtors}"
            : "floats contradicted each other, and have passed their proof tests since";

    protected override void SaveOwn(MemoryWriter memory)
    {
        for (var i = 0; i < floats.Length; i++)
        {
            if (owesTest[i])
            {
                memory.Put(KeyOf(i), 1);
            }
        }
    }

    protected override void RestoreOwn(MemoryReader memory, Moment start)
    {
        for (var i = 0; i < floats.Length; i++)
        {
            owesTest[i] = memory.Number(KeyOf(i)) == 1;
        }
    }

    private string Debtors => string.Join(", ", floats.Where((_, i) => owesTest[i]).Select(each => each.Name));

    private string KeyOf(int i) => $"{Key}/{floats[i].Name} owes test";

    private FloatPair? Find(Facts facts)
    {
        foreach (var pair in pairs)
        {
            if (!IsUnderTest(pair, facts) && pair.IsContradictory(facts))
            {
                return pair;
            }
        }

        return null;
    }

    private static bool IsUnderTest(FloatPair pair, Facts facts)
    {
        foreach (var each in pair.Floats)
        {
            if (facts.IsUnderTest(each.Id))
            {
                return true;
            }
        }

        return false;
    }

    private void Doubt(FloatPair pair)
    {
        foreach (var each in pair.Floats)
        {
            owesTest[floats.IndexOf(each)] = true;
        }

        Latch();
        Changed();
    }

    private void TakePasses(Facts facts)
    {
        for (var i = 0; i < floats.Length; i++)
        {
            if (owesTest[i] && facts.HasJustPassed(floats[i].Id))
            {
                owesTest[i] = false;
                Changed();
            }
        }
    }
}
