#include "desk/today/today_row.hpp"

#include <algorithm>
#include <array>
#include <tuple>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {

std::string work_words(Work work) {
  static constexpr std::array words{to_say("Ordering and receiving"), to_say("Patients"),
                                    to_say("Billing")};
  return said(words[static_cast<std::size_t>(work)]);
}

std::string urgency_words(Urgency urgency) {
  static constexpr std::array words{to_say("Overdue"), to_say("Today"), to_say("This week")};
  return said(words[static_cast<std::size_t>(urgency)]);
}

TodayRow start_row(std::string id, Work work, Urgency urgency, const RowKind& kind,
                   std::string sentence) {
  TodayRow row;
  row.id = std::move(id);
  row.work = work;
  row.urgency = urgency;
  row.title = said(kind.title);
  row.help = said(kind.help);
  row.action = said(kind.action);
  row.sentence = std::move(sentence);
  return row;
}

void sort_today(std::vector<TodayRow>& rows) {
  std::ranges::stable_sort(rows, {}, [](const TodayRow& row) {
    return std::tuple{row.work, row.urgency};
  });
}

std::string some_words(const std::vector<std::string>& names, std::size_t most) {
  if (names.size() <= most) return list_words(names);
  const auto more = names.size() - most;
  std::string first;
  for (std::size_t i = 0; i < most; ++i) first += (i == 0 ? "" : ", ") + names[i];
  return say_n("{} and {} more", "{} and {} more", more, first, more);
}

}  // namespace sparewell::desk
