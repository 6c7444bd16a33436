/** What a program that uses coilwright as a library calls. */
@NullMarked
package org.coilwright;

import org.jspecify.annotations.NullMarked;
