// The least that a Qt window takes to start: what the start of the program is compared with.

#include <QApplication>
#include <QMainWindow>

int main(int argc, char** argv) {
    QApplication application(argc, argv);
    QMainWindow window;
    window.resize(1280, 800);
    window.setWindowTitle(QStringLiteral("Shoulderline"));
    window.show();
    return QApplication::exec();
}
