#include "clinic/say.hpp"
#include "exchange/folder_files.hpp"

namespace sparewell::exchange {

namespace {

std::optional<Fault> check_wearing_dates(Prosthesis& prosthesis) {
  if (prosthesis.ended_on && *prosthesis.ended_on < prosthesis.delivered_on) {
    return Fault{"ended_on",
                 say("{} is before delivered_on {}; correct one of them",
                     iso_text(*prosthesis.ended_on), iso_text(prosthesis.delivered_on))};
  }
  return std::nullopt;
}

}  // namespace

const Table<Prosthesis>& prostheses_table() {
  static const Table<Prosthesis> table{
      .file = "prostheses.csv",
      .columns =
          {name_column("patient_ref", Need::required, &Prosthesis::patient).key(),
           word_column("side", Need::required, &Prosthesis::side).key(),
           word_column("level", Need::required, &Prosthesis::level),
           word_column("suspension", Need::required, &Prosthesis::suspension),
           word_column("stage", Need::optional, &Prosthesis::stage),
           column("delivered_on", Need::required, &Prosthesis::delivered_on, read_date).key(),
           column("ended_on", Need::optional, &Prosthesis::ended_on, read_date)},
      .check = check_wearing_dates};
  return table;
}

}  // namespace sparewell::exchange
