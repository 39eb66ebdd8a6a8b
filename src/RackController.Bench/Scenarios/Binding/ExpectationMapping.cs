using System.Collections.Immutable;
using NodaTime;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.Bench.Binding;

/// <summary>Reads an expectation: <c>always</c> or <c>never</c> a statement, perhaps <c>while</c> another is true, or
/// <c>within</c> a time <c>of</c> one statement <c>then</c> another, or <c>recovers-within</c> a time <c>of</c> one; <c>from</c>
/// and <c>until</c> limit each to a part of the run.</summary>
internal sealed class ExpectationMapping : Mapping<Expectation>
{
    private readonly Key<string> that = Key.Required("that", new SentenceKind(), "What must hold, in plain words.");
    private readonly Key<Duration> within = Key.Optional(
        "within", new DurationKind("0 s", "366 d", ""), "How soon the second statement must be true.");

    private readonly Key<Duration> recovers = Key.Optional(
        "recovers-within", new DurationKind("0 s", "366 d", ""),
        "How soon every tray in use must have been flooded anew and have drained, with no alarm left.");

    private readonly Key<Statement> always;
    private readonly Key<Statement> never;
    private readonly Key<Statement> condition;
    private readonly Key<Statement> of;
    private readonly Key<Statement> then;
    private readonly Key<Duration> from;
    private readonly Key<Duration> until;

    public ExpectationMapping(StatementMapping statement, ScenarioTimeKind time)
    {
        always = Key.Optional("always", statement, "Must be true at every moment.");
        never = Key.Optional("never", statement, "Must not be true at any moment.");
        condition = Key.Optional("while", statement, "Judge only while this is true.");
        of = Key.Optional("of", statement, "The statement whose becoming true starts the time.");
        then = Key.Optional("then", statement, "The statement that must then be true.");
        from = Key.Optional("from", time, "Judge from here on.");
        until = Key.Optional("until", time, "Judge until here.");
    }

    public override string Name => "expectation";

    public override string Doc => "Something that must hold of the run.";

    public override ImmutableArray<Key> Keys => [that, always, never, condition, within, recovers, of, then, from, until];

    protected override Expectation? Build(MappingReader keys)
    {
        var name = keys.Get(that);
        var line = keys.Place.Line;
        var window = new Window(
            keys.FindValue(from) ?? Duration.Zero, keys.FindValue(until) ?? Duration.MaxValue);
        var kinds = new Key[] { always, never, within, recovers }.Count(keys.IsWritten);
        var isTimed = keys.IsWritten(within) || keys.IsWritten(recovers);
        var isWhole = keys.IsWritten(of) == isTimed && keys.IsWritten(then) == keys.IsWritten(within)
            && !(isTimed && keys.IsWritten(condition));
        if (kinds != 1 || !isWhole)
        {
            keys.Complaints.Refuse(
                keys.Place, "the expectation is of no kind",
                "write `always:` or `never:`, perhaps with `while:`, `within:` with `of:` and `then:`, or `recovers-within:` with `of:`");
            return null;
        }

        return keys.Find(always) is { } ever ? new Always(name, line, window, ever, keys.Find(condition))
            : keys.Find(never) is { } no ? new Never(name, line, window, no, keys.Find(condition))
            : keys.FindValue(recovers) is { } limit ? new Recovers(name, line, window, limit, keys.Get(of))
            : new Within(name, line, window, keys.Get(within), keys.Get(of), keys.Get(then));
    }
}
