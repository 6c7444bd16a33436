/**
 * Values with units, tolerances and ranges: parse, compare, print. Imports nothing of the project.
 */
@org.jspecify.annotations.NullMarked
package org.coilwright.quantity;
