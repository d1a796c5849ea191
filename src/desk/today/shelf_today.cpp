#include "desk/today/shelf_today.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/away_rows.hpp"
#include "desk/restock_words.hpp"
#include "desk/shelf_page.hpp"
#include "desk/stock_list.hpp"
#include "desk/wording.hpp"
#include "supply/lending.hpp"
#include "supply/supplier_credit.hpp"

namespace sparewell::desk {
namespace {

std::string lot_name(const StockLevel& level) {
  return level.lot.lot.empty() ? level.lot.item.text
                               : say("{} lot {}", level.lot.item.text, level.lot.lot);
}

/// Lots of one state, the first to expire first.
struct Lots {
  std::vector<const StockLevel*> levels;
  int pieces = 0;
};

Lots lots_in(const Day& day, LotState state) {
  Lots lots;
  for (const auto& level : day.clinic().shelf) {
    if (level.quantity <= 0) continue;
    if (lot_state(level, day.clinic().places, day.today()) != state) continue;
    lots.levels.push_back(&level);
    lots.pieces += level.quantity;
  }
  std::ranges::stable_sort(
      lots.levels, {}, [](const auto* level) { return level->lot.use_by.value_or(Date::max()); });
  return lots;
}

class ShelfFinder {
 public:
  explicit ShelfFinder(const Day& day) : day_{day}, today_{day.today()} {}

  std::vector<TodayRow> all() {
    expired();
    soon();
    quarantine();
    loans();
    credits();
    transfers();
    moves();
    return std::move(rows_);
  }

 private:
  TodayRow& add(std::string id, Urgency urgency, const char* title, std::string sentence,
                const char* help, const char* action, std::size_t count) {
    auto& row = rows_.emplace_back(start_row(std::move(id), Work::orders, urgency,
                                             {title, help, action}, std::move(sentence)));
    row.count = static_cast<int>(count);
    return row;
  }

  static void lead_to(TodayRow& row, const StockLevel& level, std::optional<Command> then) {
    row.destination.to = Destination::To::shelf;
    row.destination.item = level.lot.item;
    row.destination.lot = level.lot.lot;
    row.destination.then = then;
  }

  static std::string names(const Lots& lots) {
    std::vector<std::string> words;
    for (const auto* level : lots.levels) words.push_back(lot_name(*level));
    return some_words(words);
  }

  static std::string pieces(const Lots& lots) {
    return say_n("{} piece", "{} pieces", static_cast<unsigned long>(lots.pieces), lots.pieces);
  }

  void expired() {
    const auto lots = lots_in(day_, LotState::expired);
    if (lots.levels.empty()) return;
    const auto count = lots.levels.size();
    auto& row =
        add("expired", Urgency::overdue, to_say("Expired lots"),
            say_n("{0} lot, {1}, is past its use-by date: {2}.",
                  "{0} lots, {1}, are past their use-by dates: {2}.", count, count, pieces(lots),
                  names(lots)),
            to_say("They do not count as usable and must not be handed out. Write them "
                   "off, or send them back to the supplier."),
            count == 1 ? to_say("Write off the lot") : to_say("Go to the first lot"), count);
    lead_to(row, *lots.levels.front(),
            count == 1 ? std::optional{Command::stock_write_off} : std::nullopt);
  }

  void soon() {
    const auto lots = lots_in(day_, LotState::soon);
    if (lots.levels.empty()) return;
    const auto count = lots.levels.size();
    auto& row = add(
        "use soon", Urgency::this_week, to_say("To be used soon"),
        say_n("{0} lot, {1}, is to be used by {2} at the latest: {3}.",
              "{0} lots, {1}, are to be used soon, the first by {2}: {3}.", count, count,
              pieces(lots), date_words(lots.levels.front()->lot.use_by, ""), names(lots)),
        to_say("The use-by date comes within 60 days. Hand these pieces out first, move them to "
               "where they are needed, or send them back in time."),
        to_say("Go to the first lot"), count);
    lead_to(row, *lots.levels.front(), {});
  }

  void quarantine() {
    const auto lots = lots_in(day_, LotState::quarantined);
    if (lots.levels.empty()) return;
    const auto count = lots.levels.size();
    auto& row = add(
        "quarantine", Urgency::this_week, to_say("In quarantine"),
        say_n("{0} lot, {1}, lies in quarantine: {2}.", "{0} lots, {1}, lie in quarantine: {2}.",
              count, count, pieces(lots), names(lots)),
        to_say("Pieces in quarantine are not handed out and do not count. Decide "
               "whether they go back to the supplier, are written off or released."),
        to_say("Go to the first lot"), count);
    lead_to(row, *lots.levels.front(), {});
  }

  void settle(TodayRow& row, const std::string& away) {
    row.destination.to = Destination::To::shelf;
    row.destination.row = away;
    row.destination.then = Command::stock_settle;
  }

  void loans() {
    std::vector<Loan> due;
    for (auto& loan : supply::open_loans(day_.clinic().loans)) {
      if (loan.due_on <= today_ + days{days_ahead}) due.push_back(std::move(loan));
    }
    if (due.empty()) return;
    std::vector<std::string> words;
    for (const auto& loan : due) {
      words.push_back(say("{} with {} until {}", loan.lot.item.text, loan.patient.text,
                          short_date_words(loan.due_on)));
    }
    const auto first = due.front().due_on;
    const auto urgency = first < today_    ? Urgency::overdue
                         : first == today_ ? Urgency::today
                                           : Urgency::this_week;
    auto& row = add("loans", urgency, to_say("Loans to be settled"),
                    say_n("{} loan ends within a week or should have ended: {}.",
                          "{} loans end within a week or should have ended: {}.", due.size(),
                          due.size(), some_words(words)),
                    to_say("Parts on trial with a patient. Record whether they came back, were "
                           "kept or were lost."),
                    to_say("Settle the loan"), due.size());
    settle(row, id_of_away(due.front()));
  }

  void credits() {
    const auto open = supply::open_credits(day_.clinic().supplier_returns);
    if (open.empty()) return;
    std::vector<std::string> words;
    for (const auto& sent : open) {
      words.push_back(say("{} at {} since {}", sent.lot.item.text, sent.supplier.text,
                          short_date_words(sent.sent_on)));
    }
    const auto sums = supply::credit_sums(open);
    auto sentence =
        say_n("{} return waits for its credit: {}", "{} returns wait for their credit: {}",
              open.size(), open.size(), some_words(words));
    if (!sums.empty()) sentence += say("; {} in all", amounts_words(sums));
    auto& row = add("credits", Urgency::this_week, to_say("Credits due"), sentence + ".",
                    to_say("Parts were sent back to their supplier and no full credit is "
                           "recorded. Record the credit, or ask for it."),
                    to_say("Record the credit"), open.size());
    settle(row, id_of_away(open.front()));
  }

  void transfers() {
    const auto under_way = transits(day_.clinic());
    if (under_way.empty()) return;
    int count = 0;
    for (const auto& level : under_way) count += level.quantity;
    std::vector<std::string> words;
    for (const auto& level : under_way) words.push_back(lot_name(level));
    auto& row = add("transfers", Urgency::this_week, to_say("Transfers under way"),
                    say_n("{} piece is in transit between places: {}.",
                          "{} pieces are in transit between places: {}.",
                          static_cast<unsigned long>(count), count, some_words(words)),
                    to_say("Nobody can take these pieces until their arrival is recorded."),
                    to_say("Record the arrival"), under_way.size());
    settle(row, id_of_away(under_way.front()));
  }

  void moves() {
    const auto& proposed = day_.restock().moves;
    if (proposed.empty()) return;
    std::vector<std::string> words;
    for (const auto& move : proposed) {
      words.push_back(say("{} of {} to {}", move.quantity, move.item.text, move.to.place));
    }
    auto& row = add("moves", Urgency::this_week, to_say("Moves between branches"),
                    say_n("{} move between branches is proposed: {}.",
                          "{} moves between branches are proposed: {}.", proposed.size(),
                          proposed.size(), some_words(words)),
                    to_say("Fewer pieces are then expected to be missing where they are needed. "
                           "Look at the reasons, and send what you agree with."),
                    to_say("Go to the moves"), proposed.size());
    row.destination.then = Command::branch_moves;
  }

  const Day& day_;
  Date today_;
  std::vector<TodayRow> rows_;
};

}  // namespace

std::vector<TodayRow> shelf_today(const Day& day) {
  return ShelfFinder{day}.all();
}

}  // namespace sparewell::desk
