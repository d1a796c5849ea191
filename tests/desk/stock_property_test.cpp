// 100,000 random operations on the stock, of which more than half are refused, and 160 processes
// that are killed with SIGKILL at random moments while they work on the same file. The seed is
// fixed.
#include <csignal>
#include <filesystem>
#include <numeric>

#include <doctest/doctest.h>
#include <sys/wait.h>
#include <unistd.h>

#include "desk/clinic_folder.hpp"
#include "desk/stock_operations.hpp"

namespace stock_property_test {

using namespace sparewell;
using namespace sparewell::test;

namespace {

constexpr int operations_wanted = 100'000;
constexpr int crashes_wanted = 160;
constexpr int checkpoint_every = 40;  ///< units of work

/// Operations that are written together or not at all. One that is a delivery stands alone.
using Work = std::vector<Operation>;

bool is_delivery(const Work& work) {
  return work.size() == 1 && work.front().doing == Doing::receipt && work.front().flag;
}

/// Carries `work` out and commits it; the answers say which operations were carried out.
std::vector<bool> do_work(store::Store& store, const Work& work) {
  if (is_delivery(work)) return {receive(store, work.front())};
  const auto unit = store.begin_write(tester);
  std::vector<bool> answers;
  for (const auto& operation : work) answers.push_back(carry_out(*unit, operation));
  unit->commit();
  return answers;
}

std::vector<bool> apply_all(StockModel& model, const Work& work) {
  std::vector<bool> answers;
  for (const auto& operation : work) answers.push_back(model.apply(operation));
  return answers;
}

Work random_work(std::mt19937& random, StockModel& scratch, int size) {
  Work work;
  for (int i = 0; i < size; ++i) {
    work.push_back(random_operation(random, scratch));
    auto& operation = work.back();
    // A good delivery: of a lot whose number stands for one use-by date, and against its order.
    if (size == 1 && operation.doing == Doing::receipt && operation.lot % lots_of_item == 0) {
      operation.flag = true;
    }
    scratch.apply(operation);
  }
  return work;
}

std::unique_ptr<store::Store> open(const std::string& path) {
  return store::open_clinic_file(path, store::OpenMode::create,
                                 [] { return std::chrono::system_clock::time_point{model_day}; });
}

/// The child's life: works until it is killed, and says after each unit of work that it is written.
[[noreturn]] void work_until_killed(const std::string& path, const std::vector<Work>& works,
                                    int pipe) {
  const auto store = open(path);
  for (const auto& work : works) {
    (void)do_work(*store, work);
    const char written = 'w';
    if (::write(pipe, &written, 1) != 1) _exit(1);
  }
  for (;;) ::pause();
}

/// Kills a process that does `works` at a random moment; returns how many units it had reported.
std::size_t crash_during(const std::string& path, const std::vector<Work>& works,
                         std::mt19937& random) {
  int ends[2];
  REQUIRE(::pipe(ends) == 0);
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    ::close(ends[0]);
    work_until_killed(path, works, ends[1]);
  }
  ::close(ends[1]);
  const auto waits = std::uniform_int_distribution<std::size_t>{0, works.size() - 1}(random);
  std::size_t written = 0;
  char answer = 0;
  while (written < waits && ::read(ends[0], &answer, 1) == 1) ++written;
  ::usleep(std::uniform_int_distribution<useconds_t>{0, 4000}(random));
  ::kill(child, SIGKILL);
  int status = 0;
  ::waitpid(child, &status, 0);
  CHECK(WIFSIGNALED(status));
  while (::read(ends[0], &answer, 1) == 1) ++written;
  ::close(ends[0]);
  return written;
}

bool is_as(const store::Snapshot& snapshot, const StockModel& model) {
  return shelf_of(snapshot) == model.shelf && has_same_records(snapshot, model);
}

struct Tally {
  int operations = 0;
  int refused = 0;
  int checkpoints = 0;
  int crashes = 0;
  int crashes_before_report = 0;  ///< written, but killed before saying so
  int reversals = 0;
  int reversals_refused = 0;

  void add(const std::vector<bool>& answers) {
    operations += static_cast<int>(answers.size());
    refused += static_cast<int>(std::count(answers.begin(), answers.end(), false));
  }
};

/// One process that works and is killed; the model then stands where the file stands.
void crash_once(const std::string& path, StockModel& model, std::mt19937& random, Tally& tally) {
  StockModel scratch = model;
  std::vector<Work> works;
  for (int i = 0; i < 8; ++i) {
    const bool alone = std::uniform_int_distribution<int>{0, 2}(random) > 0;
    works.push_back(random_work(random, scratch, alone ? 1 : 12));
  }
  const std::size_t written = crash_during(path, works, random);
  for (std::size_t i = 0; i < written; ++i) tally.add(apply_all(model, works[i]));
  const auto store = open(path);
  REQUIRE(store->verify().empty());
  const auto snapshot = store->read();
  ++tally.crashes;
  if (is_as(*snapshot, model)) return;
  // Else the unit of work that was under way is there, and all of it.
  REQUIRE(written < works.size());
  tally.add(apply_all(model, works[written]));
  ++tally.crashes_before_report;
  REQUIRE(is_as(*snapshot, model));
}

struct Written {
  store::RowId booking;
  std::vector<Step> steps;
  bool wrote_more = false;
  bool taken_back = false;
};

/// Works on the file and on the model side by side.
class SideBySide {
 public:
  SideBySide(store::Store& store, StockModel& model, std::mt19937& random, Tally& tally)
      : store_{store}, model_{model}, random_{random}, tally_{tally} {}

  void work(int size) {
    StockModel scratch = model_;
    const auto work = random_work(random_, scratch, size);
    model_.clear();
    const auto expected = apply_all(model_, work);
    const auto answers = do_work(store_, work);
    for (std::size_t i = 0; i < work.size(); ++i) {
      CAPTURE(static_cast<int>(work[i].doing));
      CAPTURE(work[i].from);
      CAPTURE(work[i].to);
      CAPTURE(work[i].quantity);
      REQUIRE(answers[i] == expected[i]);
    }
    tally_.add(answers);
    if (!model_.steps.empty() && size < 10) remember();
  }

  void take_something_back() {
    if (written_.empty()) return;
    const auto most = static_cast<int>(std::min<std::size_t>(written_.size(), 30)) - 1;
    const auto back =
        static_cast<std::size_t>(std::uniform_int_distribution<int>{0, most}(random_));
    auto& chosen = written_[written_.size() - 1 - back];
    const bool expected =
        !chosen.wrote_more && !chosen.taken_back && model_.take_back(chosen.steps);
    const auto booked = desk::in_one_work(store_, tester, [&](store::UnitOfWork& work) {
      return desk::book_reversal(work, chosen.booking, model_day, "a mistake");
    });
    REQUIRE(booked.has_value() == expected);
    chosen.taken_back = chosen.taken_back || expected;
    ++(expected ? tally_.reversals : tally_.reversals_refused);
    tally_.add({expected});
  }

 private:
  void remember() {
    const auto item = model_lot(model_.steps.front().lot).item;
    written_.push_back(
        {store_.read()->bookings_of(item, 1).at(0).id, model_.steps, model_.wrote_more, false});
  }

  store::Store& store_;
  StockModel& model_;
  std::mt19937& random_;
  Tally& tally_;
  std::vector<Written> written_;
};

void work_side_by_side(const std::string& path, StockModel& model, std::mt19937& random,
                       Tally& tally, int until) {
  const auto store = open(path);
  SideBySide both{*store, model, random, tally};
  for (int unit = 1; tally.operations < until; ++unit) {
    const bool small = unit % 3 == 0;
    both.work(small ? 2 : 120);
    if (small) both.take_something_back();
    if (unit % checkpoint_every != 0) continue;
    ++tally.checkpoints;
    REQUIRE(is_as(*store->read(), model));
  }
}

}  // namespace

TEST_CASE(
    "A hundred thousand operations and many crashes leave the ledger as a plain account says") {
  const ClinicFolder folder;
  const std::string path = folder.path() / "clinic.db";
  std::mt19937 random{20261125};
  StockModel model;
  Tally tally;
  prepare_clinic(*open(path));
  work_side_by_side(path, model, random, tally, 3'000);
  for (int i = 0; i < crashes_wanted; ++i) crash_once(path, model, random, tally);
  work_side_by_side(path, model, random, tally, operations_wanted);
  const auto store = open(path);
  CHECK(is_as(*store->read(), model));
  CHECK(store->verify().empty());
  int pieces = 0;
  for (const auto& level : model.shelf) pieces += level.second;
  CHECK(pieces > 1000);
  CHECK(tally.operations >= operations_wanted);
  CHECK(tally.crashes == crashes_wanted);
  CHECK(tally.refused > operations_wanted / 10);
  CHECK(tally.operations - tally.refused > operations_wanted / 4);
  CHECK(tally.reversals > 100);
  CHECK(tally.reversals_refused > 100);
  CHECK(model.loans.size() > 100);
  CHECK(model.returns.size() > 100);
  MESSAGE(tally.operations, " operations, ", tally.refused, " refused, ", tally.reversals,
          " reversals and ", tally.reversals_refused, " refused; ", tally.crashes, " crashes, ",
          tally.crashes_before_report, " of them after the commit and before its report; ",
          tally.checkpoints, " checkpoints; ", model.loans.size(), " loans, ", model.returns.size(),
          " returns, ", pieces, " pieces on the shelf");
}

}  // namespace stock_property_test
