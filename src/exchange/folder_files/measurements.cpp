#include "clinic/say.hpp"
#include "exchange/folder_files.hpp"

namespace sparewell::exchange {

const Table<Measurement>& measurements_table() {
  static const Table<Measurement> table{
      .file = "measurements.csv",
      .columns = {name_column("patient_ref", Need::required, &Measurement::patient).key(),
                  word_column("side", Need::required, &Measurement::side).key(),
                  column("measured_on", Need::required, &Measurement::measured_on, read_date).key(),
                  column("at_cm", Need::required, &Measurement::at_cm,
                         number_between(0, 120, to_say("a height from 0 to 120 cm")))
                      .key(),
                  column("circumference_cm", Need::required, &Measurement::circumference_cm,
                         number_between(5, 120, to_say("a circumference from 5 to 120 cm")))}};
  return table;
}

}  // namespace sparewell::exchange
