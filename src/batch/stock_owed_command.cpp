#include "batch/stock_command.hpp"
#include "desk/stock_owed.hpp"

namespace sparewell::batch {
namespace {

template <class Book>
void books(Command* command, Context& context, const std::string& why, Book book) {
  command->callback([&context, why, book] {
    context.run = [&context, why, book] { return book_and_print(context, why, book); };
  });
}

void add_return(Command& stock, Context& context) {
  auto* command = stock.add_subcommand("return", "Send pieces back to their supplier");
  const auto given = std::make_shared<PiecesOptions>();
  const auto request = std::make_shared<desk::ReturnRequest>();
  given->add_to(*command, "Where they lie (default: the main place)");
  command->add_option("--supplier", request->supplier, "Who takes them back (default: the item's)");
  command->add_option("--reference", request->reference, "The return's number or our own reference")
      ->required();
  command->add_option("--credit", request->credit,
                      "The credit due for all pieces (default: the unit cost of each)");
  command->add_option("--reason", request->reason, "Why")->required();
  books(command, context, "stock was sent back to its supplier",
        [&context, given, request](store::UnitOfWork& work) {
          auto read = *request;
          read.pieces = given->read(work);
          return desk::book_return(work, read, context.today());
        });
}

void add_credit(Command& stock, Context& context) {
  auto* command = stock.add_subcommand("credit", "Record what a supplier answered to a return");
  const auto request = std::make_shared<desk::CreditRequest>();
  command->add_option("--return", request->number, "The number of the return")->required();
  command->add_option("--amount", request->amount, "The amount credited");
  command->add_flag("--last", request->is_last, "Nothing more will come");
  command->add_flag("--accept-more", request->accept_more, "More than was due is right");
  command->add_option("--back-to", request->back_to,
                      "The supplier sent the pieces back; they lie here");
  command->add_option("--reason", request->reason, "Why, for the ledger");
  books(command, context, "a supplier answered a return",
        [&context, request](store::UnitOfWork& work) {
          return desk::book_credit(work, *request, context.today());
        });
}

void add_lend(Command& stock, Context& context) {
  auto* command = stock.add_subcommand("lend", "Lend pieces to a patient on trial");
  struct Options {
    PiecesOptions given;
    desk::LendRequest request;
    std::string side;
    std::string until;
  };
  const auto options = std::make_shared<Options>();
  options->given.add_to(*command, "Where they lie (default: the main place)");
  command->add_option("--patient", options->request.patient, "The patient's reference")->required();
  command->add_option("--side", options->side, "left or right")
      ->required()
      ->one_of({"left", "right"});
  command->add_option("--until", options->until, "The last day of the trial, YYYY-MM-DD")
      ->required();
  command->add_option("--note", options->request.note, "What the trial is for");
  command->add_option("--override", options->request.override_by,
                      "The clinician who decides although a check stops it");
  command->add_option("--because", options->request.override_because, "The clinician's reason");
  books(command, context, "a part was lent to a patient",
        [&context, options](store::UnitOfWork& work) {
          auto read = options->request;
          read.pieces = options->given.read(work);
          read.side = *parse_word<Side>(options->side);
          read.due_on = date_option("--until", options->until);
          return desk::book_loan(work, read, context.today());
        });
}

void add_loan_back(Command& stock, Context& context) {
  auto* command = stock.add_subcommand(
      "loan-back", "Record what became of a loan: it came back, is kept, or is lost");
  const auto request = std::make_shared<desk::LoanEndRequest>();
  constexpr int most = 1'000'000;
  auto& end = request->end;
  command->add_option("--loan", request->number, "The number of the loan")->required();
  command->add_option("--back", end.came_back, "Pieces that came back")->within(0, most);
  command->add_option("--to", end.place, "Where those are put (default: the main place)");
  command->add_option("--kept", end.kept, "Pieces that the patient keeps; they are issued")
      ->within(0, most);
  command->add_option("--serial", request->serials, "Serial number of a kept piece; once for each")
      ->repeatable();
  command->add_option("--lost", end.lost, "Pieces that are lost")->within(0, most);
  command->add_option("--reason", end.reason, "Why, for the ledger");
  books(command, context, "a loan ended", [&context, request](store::UnitOfWork& work) {
    auto read = *request;
    if (read.end.place.empty()) read.end.place = work.settings().main_place;
    return desk::book_loan_end(work, read, context.today());
  });
}

}  // namespace

void add_stock_owed(Command& stock, Context& context) {
  add_return(stock, context);
  add_credit(stock, context);
  add_lend(stock, context);
  add_loan_back(stock, context);
}

}  // namespace sparewell::batch
