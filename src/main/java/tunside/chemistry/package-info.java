/**
 * Acids, bases and water: dissociation constants against temperature, activities, the carbonate system, complexes, and
 * the two balances that fix a pH: electroneutrality of a water ({@link tunside.chemistry.ChargeBalance}) and the proton
 * balance of a mash or wort ({@link tunside.chemistry.ProtonBalance}).
 *
 * <p>Concentrations are mol per kg of water; at brewing dilution one litre is taken for one kilogram.
 */
package tunside.chemistry;
