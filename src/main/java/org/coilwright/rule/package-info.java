/**
 * What a rule is: facts about it, its outcome, the runner. May import quantity, netlist, table,
 * circuit and solve.
 */
@org.jspecify.annotations.NullMarked
package org.coilwright.rule;
