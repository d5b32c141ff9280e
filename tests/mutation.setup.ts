import fc from 'fast-check';

// A mutant is dead with the first case that fails: looking for the smallest one would take most of the run.
fc.configureGlobal({ endOnFailure: true });
