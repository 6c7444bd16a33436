/** Pictures as plain shapes, independent of the medium, and as SVG or PNG. Imports nothing. */
@org.jspecify.annotations.NullMarked
package org.coilwright.drawing;
