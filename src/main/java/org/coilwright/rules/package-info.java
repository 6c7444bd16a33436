/**
 * One class a rule, one ordered list of all. May import quantity, netlist, table, circuit, solve
 * and rule.
 */
@org.jspecify.annotations.NullMarked
package org.coilwright.rules;
