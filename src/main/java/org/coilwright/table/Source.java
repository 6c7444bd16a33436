package org.coilwright.table;

/**
 * An entry of the bibliography.
 *
 * @param key how tables name it
 * @param cite what is printed: title, publisher, edition; says "reprint" where the original was not
 *     read
 */
public record Source(String key, String cite) {}
