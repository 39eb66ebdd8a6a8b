namespace RackController.RackFile;

/// <summary>How much a complaint weighs.</summary>
public enum Severity
{
    /// <summary>The file can be run, and would be wiser otherwise.</summary>
    Warning,

    /// <summary>The file cannot be run.</summary>
    Error,
}

/// <summary>One thing that is wrong in a file, where, and what the writer can do about it.</summary>
/// <param name="File">The file as the person named it.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
/// <param name="What">What is wrong.</param>
/// <param name="WhatToDo">What to do.</param>
/// <param name="Severity">Whether the file can still be run.</param>
public sealed record Complaint(
    string File, int Line, int Column, string What, string WhatToDo, Severity Severity = Severity.Error)
{
    /// <summary><c>file:line:column: what: what to do</c>, with <c>warning:</c> after the place where it is one.</summary>
    public override string ToString() =>
        $"{File}:{Line}:{Column}: {(Severity == Severity.Warning ? "warning: " : "")}{What}: {WhatToDo}";
}
