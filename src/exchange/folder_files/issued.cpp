#include "clinic/say.hpp"
#include "exchange/folder_files.hpp"

namespace sparewell::exchange {

namespace {

std::optional<Fault> check_end(Unit& unit) {
  if (unit.ended_on && *unit.ended_on < unit.issued_on) {
    return Fault{"ended_on", say("{} is before issued_on {}; correct one of them",
                                 iso_text(*unit.ended_on), iso_text(unit.issued_on))};
  }
  if (unit.ended_on && !unit.end_reason) {
    return Fault{"end_reason", say("is empty although ended_on is set; write one of: {}",
                                   allowed_words<EndReason>())};
  }
  if (unit.end_reason && !unit.ended_on) {
    return Fault{"ended_on",
                 said("is empty although end_reason is set; write the date, or clear end_reason")};
  }
  return std::nullopt;
}

}  // namespace

const Table<Unit>& issued_table() {
  static const Table<Unit> table{
      .file = "issued.csv",
      .columns = {name_column("patient_ref", Need::required, &Unit::patient).key(),
                  word_column("side", Need::required, &Unit::side).key(),
                  name_column("item_code", Need::required, &Unit::item).key(),
                  name_column("lot", Need::optional, &Unit::lot).key(),
                  name_column("serial", Need::optional, &Unit::serial).key(),
                  column("issued_on", Need::required, &Unit::issued_on, read_date).key(),
                  column("ended_on", Need::optional, &Unit::ended_on, read_date),
                  word_column("end_reason", Need::optional, &Unit::end_reason),
                  column("share", Need::optional, &Unit::share,
                         number_between(0, 1, to_say("a share of the time, 0 to 1")))},
      .copies = true,
      .check = check_end};
  return table;
}

}  // namespace sparewell::exchange
