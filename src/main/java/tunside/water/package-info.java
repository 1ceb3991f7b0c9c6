/** Water: from a laboratory's report to what is dissolved in it, whether the report hangs together, and blends. */
package tunside.water;
