/**
 * What a reading of a sample means: whether it has settled and where it is heading, what calibration, temperature and
 * drift make of it, and how sure it is.
 */
package tunside.electrode.reading;
