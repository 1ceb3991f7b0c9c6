/** {@code POST /v1/calibration-evaluations} and {@code GET /v1/buffers}: judge an electrode, and the buffers to do it in. */
package tunside.http.calibration;
