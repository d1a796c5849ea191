#include "clinic/say.hpp"
#include "exchange/folder_files.hpp"

namespace sparewell::exchange {

const Table<Usage>& usage_table() {
  static const auto hours = number_between(0, 24, to_say("hours a day, 0 to 24"));
  static const Table<Usage> table{
      .file = "usage.csv",
      .columns = {name_column("patient_ref", Need::required, &Usage::patient).key(),
                  column("from_date", Need::required, &Usage::from_date, read_date).key(),
                  word_column("activity", Need::optional, &Usage::activity),
                  column("kneeling_hours", Need::optional, &Usage::kneeling_hours, hours),
                  column("wear_hours", Need::optional, &Usage::wear_hours, hours),
                  word_column("sweating", Need::optional, &Usage::sweating),
                  column("impact_sport", Need::optional, &Usage::impact_sport, read_yes_no)}};
  return table;
}

}  // namespace sparewell::exchange
