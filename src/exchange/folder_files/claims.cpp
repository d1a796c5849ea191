#include "clinic/say.hpp"
#include "exchange/folder_files.hpp"

namespace sparewell::exchange {

const Table<ClaimLine>& claims_table() {
  static const Table<ClaimLine> table{
      .file = "claims.csv",
      .columns = {name_column("claim_ref", Need::required, &ClaimLine::claim_ref).key(),
                  name_column("patient_ref", Need::required, &ClaimLine::patient).key(),
                  word_column("side", Need::optional, &ClaimLine::side).key(),
                  column("service_date", Need::required, &ClaimLine::service_date, read_date).key(),
                  name_column("code", Need::required, &ClaimLine::code).key(),
                  column("modifiers", Need::optional, &ClaimLine::modifiers, read_list).key(),
                  column("quantity", Need::required, &ClaimLine::quantity,
                         whole_between(0, 1'000'000, to_say("0 or more"))),
                  column("charge", Need::optional, &ClaimLine::charge, read_signed_money),
                  name_column("payer", Need::optional, &ClaimLine::payer),
                  word_column("submission", Need::optional, &ClaimLine::submission),
                  name_column("replaces", Need::optional, &ClaimLine::replaces),
                  name_column("line_control", Need::optional, &ClaimLine::line_control)},
      .copies = true,
      .has_amounts = true};
  return table;
}

}  // namespace sparewell::exchange
