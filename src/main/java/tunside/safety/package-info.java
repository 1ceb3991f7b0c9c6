/** How not to get hurt: notes by what is handled, hazards by substance and strength, supply limits. */
package tunside.safety;
