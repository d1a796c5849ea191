#include "clinic/say.hpp"
#include "exchange/folder_files.hpp"

namespace sparewell::exchange {

namespace {

std::optional<Fault> check_reaction_dates(Reaction& reaction) {
  if (reaction.ended_on && *reaction.ended_on < reaction.began_on) {
    return Fault{"ended_on", say("{} is before began_on {}; correct one of them",
                                 iso_text(*reaction.ended_on), iso_text(reaction.began_on))};
  }
  return std::nullopt;
}

}  // namespace

const Table<Reaction>& reactions_table() {
  static const Table<Reaction> table{
      .file = "reactions.csv",
      .columns = {name_column("patient_ref", Need::required, &Reaction::patient).key(),
                  word_column("side", Need::optional, &Reaction::side).key(),
                  column("began_on", Need::required, &Reaction::began_on, read_date).key(),
                  column("ended_on", Need::optional, &Reaction::ended_on, read_date),
                  column("signs", Need::required, &Reaction::signs, read_list),
                  column("note", Need::optional, &Reaction::note, read_text)},
      .check = check_reaction_dates};
  return table;
}

}  // namespace sparewell::exchange
