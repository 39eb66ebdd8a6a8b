using System.Collections.Immutable;
using NodaTime;

namespace RackController.Bench;

/// <summary>What another rack file would have made of what is on record.</summary>
/// <param name="Loads">Every load of the other file.</param>
/// <param name="Trips">Interlocks that would have acted more or less often.</param>
/// <param name="Alarms">Alarms that would have been raised more or less often.</param>
/// <param name="Differences">Where a load begins to be commanded differently, in order; of very many the first.</param>
/// <param name="DifferenceCount">How many there were.</param>
/// <param name="Told">How much time is on record.</param>
/// <param name="Unknown">Sensors of the other file that are not on record.</param>
public sealed record WhatIfResult(
    ImmutableArray<WhatIfLoad> Loads, ImmutableArray<WhatIfCount> Trips, ImmutableArray<WhatIfCount> Alarms,
    ImmutableArray<ReplayDifference> Differences, long DifferenceCount, Duration Told, ImmutableArray<string> Unknown);

/// <summary>How long a load was on, and would have been.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Then">How long it was on; null when there was none of that name.</param>
/// <param name="With">How long it would have been.</param>
/// <param name="OnlyThen">How long it was on and would not have been.</param>
/// <param name="OnlyWith">How long it would have been on and was not.</param>
public sealed record WhatIfLoad(string Name, Duration? Then, Duration With, Duration OnlyThen, Duration OnlyWith);

/// <summary>How often something happened, and would have.</summary>
/// <param name="Subject">The interlock or alarm.</param>
/// <param name="Then">How often it did.</param>
/// <param name="With">How often it would have.</param>
public sealed record WhatIfCount(string Subject, int Then, int With);
